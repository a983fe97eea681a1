package org.isopter.mapper.mllp;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.SocketException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.v2.V2Header;
import org.isopter.mapper.v2.V2Reader;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Messages received by the MLLP of HL7's Transport Specification, release 1 (start mark 0B, end
 * mark 1C and 0D), and answered by HL7 v2.5.1, section 2.9.2, with the codes of tables 0008 and
 * 0357.
 */
@Timeout(60)
class MessageListenerTest {

  private static final int LONGEST = 20_000;
  private static final int CONNECTIONS = 16;

  @TempDir Path temp;

  private final List<String> heard = new CopyOnWriteArrayList<>();
  private Path inbox = Path.of("");
  private MessageFolder folder;
  private MessageListener listener;

  private final ListenerEvents events =
      new ListenerEvents() {
        @Override
        public void kept(Path file, boolean before) {
          heard.add(before ? "before" : "kept");
        }

        @Override
        public void refused(String sender, String why) {
          heard.add(why);
        }
      };

  private static ListenerOptions options(Duration idle) {
    return new ListenerOptions(
        new InetSocketAddress(InetAddress.getLoopbackAddress(), 0),
        LONGEST,
        CONNECTIONS,
        idle,
        Optional.empty(),
        false);
  }

  @BeforeEach
  void start() throws IOException {
    inbox = temp.resolve("inbox");
    folder = MessageFolder.at(inbox);
    listener = MessageListener.start(options(Duration.ofSeconds(20)), folder, events);
  }

  @AfterEach
  void stop() throws IOException {
    listener.close();
    folder.close();
    assertEquals(List.of(), hidden());
  }

  private void restart(Inbox other, Duration idle) throws IOException {
    listener.close();
    listener = MessageListener.startWith(options(idle), other, events);
  }

  private List<String> hidden() throws IOException {
    return names().stream().filter(name -> name.startsWith(".")).toList();
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(inbox)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private List<Path> messages() throws IOException {
    try (Stream<Path> files = Files.list(inbox)) {
      return files.filter(file -> file.toString().endsWith(".hl7")).sorted().toList();
    }
  }

  private static String message(String id) throws IOException {
    return Files.readString(Path.of("../docs/results.hl7"))
        .replace("|m-1|", "|" + id + "|")
        .replace('\n', '\r');
  }

  private TestSender sender() throws IOException {
    return TestSender.to(listener.port());
  }

  /** Sends a message over a connection of its own and returns the segments of the answer. */
  private List<String> answer(String message) throws IOException {
    try (TestSender sender = sender()) {
      sender.send(TestSender.framed(message));
      return List.of(sender.answer().split("\r", -1));
    }
  }

  private static String msa(List<String> answer) {
    return answer.size() > 1 ? answer.get(1) : answer.toString();
  }

  private static String err(List<String> answer) {
    List<String> fields = List.of(answer.get(2).split("\\|", -1));
    return fields.get(2) + " " + fields.get(3).replaceAll("\\^.*", "");
  }

  /** What is told comes after the answer; the time limit of the tests bounds the wait. */
  private void awaitEvent(String event) {
    while (!heard.contains(event)) {
      Thread.onSpinWait();
    }
  }

  @Test
  void keepsAMessageBeforeItIsAcknowledged() throws IOException {
    List<String> answer = answer(message("m-1"));
    assertTrue(
        answer
            .get(0)
            .matches(
                "MSH\\|\\^~\\\\&\\|REC\\|QH\\|EYE\\|QH\\|\\d{14}(\\.\\d+)?\\+0000\\|\\|ACK\\^R01\\^ACK"
                    + "\\|[0-9a-f]{20}\\|P\\|2\\.5\\.1\\|{6}UNICODE UTF-8"),
        answer.get(0));
    assertEquals(List.of("MSA|AA|m-1"), answer.subList(1, answer.size()));
    assertEquals(1, messages().size());
    assertArrayEquals(message("m-1").getBytes(UTF_8), Files.readAllBytes(messages().get(0)));
  }

  @Test
  void keepsWhatTheReaderOfMessagesReads() throws IOException {
    answer(message("m-1"));
    byte[] kept = Files.readAllBytes(messages().get(0));
    ForeignReader reader = new ForeignReader(Catalogue.standard(), Options.usual());
    int facts =
        reader.readTogether(List.of(V2Reader.read(kept).orThrow())).exams().stream()
            .mapToInt(one -> one.exam().facts().size())
            .sum();
    assertEquals(4, facts);
  }

  @Test
  void takesTwoMessagesInOneSegment() throws IOException {
    try (TestSender sender = sender()) {
      sender.send(TestSender.framed(message("a")) + TestSender.framed(message("b")));
      assertTrue(sender.answer().endsWith("MSA|AA|a"));
      assertTrue(sender.answer().endsWith("MSA|AA|b"));
    }
    assertEquals(2, messages().size());
  }

  @Test
  void takesAMessageThatComesByteByByte() throws IOException {
    try (TestSender sender = sender()) {
      String framed = TestSender.framed(message("bytes").replace("mood", "möod"));
      for (byte one : framed.getBytes(UTF_8)) {
        sender.sendByte(one);
      }
      assertTrue(sender.answer().endsWith("MSA|AA|bytes"));
    }
    assertTrue(Files.readString(messages().get(0)).contains("möod"));
  }

  @Test
  void keepsNothingThatHasNoEnd() throws IOException {
    String whole = TestSender.framed(message("cut"));
    for (int kept : List.of(1, 40, whole.length() - 2, whole.length() - 1)) {
      try (TestSender sender = sender()) {
        sender.send(whole.substring(0, kept));
        sender.end();
        assertEquals("", sender.answer());
      }
    }
    assertEquals(List.of(), messages());
  }

  @Test
  void refusesAMessageInWhichTheNextBegins() throws IOException {
    try (TestSender sender = sender()) {
      sender.send("\u000b" + message("open") + TestSender.framed(message("next")));
      assertTrue(sender.answer().contains("MSA|AR|open\rERR||"));
    }
    assertEquals(List.of(), messages());
    assertEquals("MSA|AA|next", msa(answer(message("next"))));
  }

  /** A text that holds the end mark must not be taken for the whole. */
  @Test
  void refusesAnEndMarkInTheMiddle() throws IOException {
    List<String> answer = answer(message("middle").replace("Sitting", "Sit\u001cting"));
    assertEquals("MSA|AR|middle", msa(answer));
    assertEquals(List.of(), messages());
  }

  @Test
  void refusesWhatIsTooLong() throws IOException {
    assertEquals(
        "MSA|AR|long", msa(answer(message("long") + "NTE|2|L|" + "x".repeat(LONGEST) + "\r")));
    assertEquals(List.of(), messages());
    int room = LONGEST - message("fits").length() - "NTE|2|L|\r".length() - 1;
    assertEquals(
        "MSA|AA|fits", msa(answer(message("fits") + "NTE|2|L|" + "x".repeat(room) + "\r")));
  }

  @Test
  void refusesWhatIsNoMessage() throws IOException {
    assertEquals("MSA|AR", msa(answer("Right eye 14 mmHg")));
    assertEquals("MSA|AR", msa(answer("{\"resourceType\":\"Observation\"}")));
    assertEquals("MSA|AR", msa(answer("")));
    try (TestSender sender = sender()) {
      sender.send("GET / HTTP/1.1\r\nHost: localhost\r\n\r\n");
      assertEquals("", sender.answer());
    }
    assertEquals(List.of(), messages());
  }

  private record Wrong(String from, String to, String code, String error) {}

  @Test
  void saysByTheTableWhyAMessageIsRefused() throws IOException {
    String id = "|ORU^R01^ORU_R01|w|P|2.5.1";
    List<Wrong> all =
        List.of(
            new Wrong("ORU^R01^ORU_R01", "ADT^A01^ADT_A01", "AR", "MSH^1^9 200"),
            new Wrong("ORU^R01^ORU_R01", "ORU^R30^ORU_R30", "AR", "MSH^1^9 201"),
            new Wrong("|w|P|", "|w|T|", "AR", "MSH^1^11 202"),
            new Wrong("|2.5.1", "|3.0", "AR", "MSH^1^12 203"),
            new Wrong("|2.5.1", "|", "AR", "MSH^1^12 101"),
            new Wrong(id, id + "||||||8859/1", "AR", "MSH^1^18 103"),
            new Wrong("|w|", "||", "AE", "MSH^1^10 101"),
            new Wrong("\rPID", "\rMSH|^~\\&|x\rPID", "AE", " 100"),
            new Wrong("Sitting", "Sittezed\rafter drops", "AE", " 100"));
    for (Wrong wrong : all) {
      String message = message("w");
      assertTrue(message.contains(wrong.from()), wrong.from());
      List<String> answer =
          answer(
              message.replaceFirst(
                  java.util.regex.Pattern.quote(wrong.from()),
                  java.util.regex.Matcher.quoteReplacement(wrong.to())));
      assertTrue(msa(answer).startsWith("MSA|" + wrong.code()), wrong + msa(answer));
      assertEquals(wrong.error(), err(answer), wrong.toString());
    }
    assertEquals(List.of(), messages());
  }

  @Test
  void takesEachVersionThatHasTheSameFields() throws IOException {
    assertEquals("MSA|AA|v", msa(answer(message("v").replace("|2.5.1", "|2.3"))));
    assertEquals("MSA|AA|w", msa(answer(message("w").replace("|2.5.1", "|2.8.2"))));
  }

  /** HL7 v2.5.1, section 2.9.3: a sender may ask for an accept acknowledgement. */
  @Test
  void answersAsTheSenderAsks() throws IOException {
    assertEquals("MSA|CA|c", msa(answer(message("c").replace("|2.5.1", "|2.5.1|||AL|NE"))));
    assertEquals("MSA|CR|d", msa(answer(message("d").replace("|P|2.5.1", "|T|2.5.1|||AL|NE"))));
  }

  @Test
  void keepsOnceWhatIsSentAgain() throws IOException {
    assertEquals("MSA|AA|m-1", msa(answer(message("m-1"))));
    assertEquals("MSA|AA|m-1", msa(answer(message("m-1"))));
    assertEquals(1, messages().size());
    List<String> other = answer(message("m-1").replace("||14|", "||41|"));
    assertEquals("MSA|AE|m-1", msa(other));
    assertEquals("MSH^1^10 205", err(other));
    assertTrue(Files.readString(messages().get(0)).contains("||14|"));
    assertEquals("MSA|AA|m-1", msa(answer(message("m-1").replace("|EYE|QH|", "|EYE2|QH|"))));
    assertEquals(2, messages().size());
    awaitEvent("before");
    assertTrue(heard.indexOf("kept") < heard.indexOf("before"));
  }

  /** The message is on the disk and nobody was answered: sent again, it is there once. */
  @Test
  void findsAgainWhatWasKeptAndNotAcknowledged() throws IOException {
    AtomicInteger calls = new AtomicInteger();
    restart(
        (header, message) -> {
          KeptMessage kept = folder.inbox().keep(header, message);
          if (calls.getAndIncrement() == 0) {
            throw new IllegalStateException("killed");
          }
          return kept;
        },
        Duration.ofSeconds(20));
    try (TestSender sender = sender()) {
      sender.send(TestSender.framed(message("k")));
      assertEquals("", sender.answer());
    }
    assertEquals(1, messages().size());
    assertThrows(IllegalStateException.class, listener::await);
    restart(folder.inbox(), Duration.ofSeconds(20));
    assertEquals("MSA|AA|k", msa(answer(message("k"))));
    assertEquals(1, messages().size());
  }

  /** The part of a killed process is no message, and gone when the folder is opened again. */
  @Test
  void deletesWhatAKilledProcessLeftHalf() throws IOException {
    listener.close();
    folder.close();
    Files.writeString(inbox.resolve(".0123.hl7.part"), "MSH|^~\\&|");
    folder = MessageFolder.at(inbox);
    assertEquals(List.of(".receiving"), names());
  }

  @Test
  void receivesIntoAFolderOnce() {
    assertThrows(IOException.class, () -> MessageFolder.at(inbox));
  }

  @Test
  void asksForTheMessageAgainWhereTheDiskFails() throws IOException {
    restart(
        (header, message) -> {
          throw new IOException("no space left on device");
        },
        Duration.ofSeconds(20));
    List<String> answer = answer(message("full"));
    assertEquals("MSA|AR|full", msa(answer));
    assertEquals(" 207", err(answer));
    assertFalse(String.join("", answer).contains("device"));
  }

  @Test
  void givesUpOnASenderThatIsTooSlow() throws IOException {
    restart(folder.inbox(), Duration.ofMillis(300));
    long start = System.nanoTime();
    try (TestSender sender = sender()) {
      sender.send("\u000bMSH|^~\\&|");
      // Never silent for long, and never at the end.
      assertThrows(
          SocketException.class,
          () -> {
            for (int i = 0; i < 1000; i++) {
              sender.send("x");
              Thread.sleep(20);
            }
          });
    }
    assertTrue(Duration.ofNanos(System.nanoTime() - start).toSeconds() < 15);
    assertEquals(List.of(), messages());
    assertEquals("MSA|AA|n", msa(answer(message("n"))));
  }

  @Test
  void closesAConnectionThatIsSilent() throws IOException {
    restart(folder.inbox(), Duration.ofMillis(200));
    try (TestSender sender = sender()) {
      assertEquals("", sender.answer());
    }
  }

  @Test
  void servesManyAndTurnsAwayTooMany() throws Exception {
    List<TestSender> senders = new ArrayList<>();
    try {
      for (int i = 0; i < CONNECTIONS; i++) {
        TestSender sender = sender();
        senders.add(sender);
        sender.send(TestSender.framed(message("s-" + i)));
        assertTrue(sender.answer().contains("MSA|AA|s-" + i));
      }
      try (TestSender more = sender()) {
        assertEquals("", more.answer());
      }
      awaitEvent("more than " + CONNECTIONS + " connections");
      senders.get(1).send(TestSender.framed(message("again")));
      assertTrue(senders.get(1).answer().contains("MSA|AA|again"));
    } finally {
      for (TestSender sender : senders) {
        sender.close();
      }
    }
    assertEquals(CONNECTIONS + 1, messages().size());
  }

  @Test
  void keepsOneFileWhereManySendTheSameAtOnce() throws Exception {
    List<Thread> threads = new ArrayList<>();
    List<String> answers = new CopyOnWriteArrayList<>();
    for (int i = 0; i < CONNECTIONS; i++) {
      Thread thread =
          new Thread(
              () -> {
                try {
                  answers.add(msa(answer(message("same"))));
                } catch (IOException broken) {
                  answers.add(broken.toString());
                }
              });
      thread.start();
      threads.add(thread);
    }
    for (Thread thread : threads) {
      thread.join();
    }
    assertEquals(List.of("MSA|AA|same"), answers.stream().distinct().toList());
    assertEquals(CONNECTIONS, answers.size());
    assertEquals(1, messages().size());
  }

  /** What is being kept when the listener is closed is answered; nothing is left half. */
  @Test
  void answersWhatItIsKeepingBeforeItStops() throws Exception {
    Inbox slow =
        (V2Header header, byte[] message) -> {
          heard.add("keeping");
          try {
            Thread.sleep(300);
          } catch (InterruptedException hurried) {
            throw new IOException(hurried);
          }
          return folder.inbox().keep(header, message);
        };
    restart(slow, Duration.ofSeconds(20));
    try (TestSender sender = sender()) {
      sender.send(TestSender.framed(message("last")));
      awaitEvent("keeping");
      listener.close();
      assertTrue(sender.answer().contains("MSA|AA|last"));
    }
    listener.await();
    assertEquals(1, messages().size());
  }
}
