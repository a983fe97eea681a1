package org.isopter.mapper.mllp;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.v2.V2Reader;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.Test;

/**
 * Messages received by the MLLP of HL7's Transport Specification, release 1 (start mark 0B, end
 * mark 1C and 0D), and answered by HL7 v2.5.1, section 2.9.2, with the codes of tables 0008 and
 * 0357.
 */
class MessageListenerTest extends ReceiverFixture {

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
            new Wrong(id, id + "||||||ISO IR87", "AR", "MSH^1^18 103"),
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
}
