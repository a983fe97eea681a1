package org.isopter.mapper.mllp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.SocketException;
import java.nio.file.Files;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.isopter.mapper.v2.V2Header;
import org.junit.jupiter.api.Test;

/** What is acknowledged is kept, once, whatever the disk, the process or other senders do. */
class KeptMessagesTest extends ReceiverFixture {

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

  /** Four that are being kept at once have five seconds together, and not each. */
  @Test
  void waitsForAllConnectionsTogether() throws IOException, InterruptedException {
    int many = 4;
    CountDownLatch begun = new CountDownLatch(many);
    CountDownLatch over = new CountDownLatch(1);
    restart(
        (header, message) -> {
          begun.countDown();
          try {
            over.await();
          } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
          }
          throw new IOException("no space left on device");
        },
        Duration.ofSeconds(60));
    List<TestSender> senders = new ArrayList<>();
    for (int i = 0; i < many; i++) {
      senders.add(sender());
      senders.get(i).send(TestSender.framed(message("slow-" + i)));
    }
    begun.await();
    assertTimeout(Duration.ofSeconds(15), listener::close);
    over.countDown();
    for (TestSender sender : senders) {
      sender.close();
    }
  }
}
