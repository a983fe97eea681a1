package org.isopter.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_ORDER_OBSERVATION;
import ca.uhn.hl7v2.model.v251.message.ACK;
import ca.uhn.hl7v2.model.v251.message.ORU_R01;
import ca.uhn.hl7v2.validation.builder.support.DefaultValidationBuilder;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.message.Acknowledgement;
import org.isopter.mapper.message.MessageWriter;
import org.isopter.mapper.message.ResultMessage;
import org.isopter.mapper.v2.V2Fault;
import org.isopter.mapper.v2.V2Header;
import org.isopter.model.exam.Exam;
import org.isopter.model.simulate.Cohort;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/**
 * What a parser from outside makes of our messages: HAPI's structures of HL7 v2.5.1 with its
 * default validation of that version.
 */
class MessageParserTest {

  private static final HapiContext CONTEXT = new DefaultHapiContext();
  private static final MessageWriter WRITER = new MessageWriter();
  private static final int PERSONS = 100;

  static {
    CONTEXT.setValidationRuleBuilder(new DefaultValidationBuilder());
  }

  @AfterAll
  static void close() throws IOException {
    CONTEXT.close();
  }

  private static ORU_R01 parsed(String message) throws HL7Exception {
    return (ORU_R01) CONTEXT.getPipeParser().parse(message);
  }

  private static void check(Exam exam) throws HL7Exception {
    ResultMessage message = WRITER.write(exam).orThrow();
    ORU_R01 parsed = parsed(message.text());
    assertEquals(message.text(), CONTEXT.getPipeParser().encode(parsed));
    ORU_R01_ORDER_OBSERVATION order = parsed.getPATIENT_RESULT().getORDER_OBSERVATION();
    long wholes =
        order.getOBSERVATIONAll().stream()
            .filter(one -> !one.getOBX().getObservationSubID().getValue().contains("."))
            .count();
    assertEquals(message.facts(), wholes);
  }

  @Test
  void parsesEveryRecordOfTheDemo() throws HL7Exception {
    List<Exam> exams = DemoRecords.ofEveryForm();
    assertEquals(16, exams.size());
    for (Exam exam : exams) {
      check(exam);
    }
  }

  @Test
  void parsesDeletionsAndCorrections() throws HL7Exception {
    List<Exam> exams = DemoRecords.ofEveryForm();
    Exam former = exams.get(9);
    Exam amended = exams.get(10);
    assertEquals(amended.header().amends().orElseThrow(), former.header().id());
    Exam wrong = new Exam(former.header().enteredInError(), former.facts());
    for (ResultMessage message :
        List.of(
            WRITER.write(wrong).orThrow(),
            WRITER.writeAfter(amended, former).orThrow(),
            WRITER.writeAfter(former, amended).orThrow())) {
      ORU_R01 parsed = parsed(message.text());
      assertEquals(message.text(), CONTEXT.getPipeParser().encode(parsed));
      assertEquals(
          "D",
          parsed
              .getPATIENT_RESULT()
              .getORDER_OBSERVATION()
              .getOBSERVATION()
              .getOBX()
              .getObservationResultStatus()
              .getValue());
    }
  }

  @Test
  void parsesSixtySampledRecords() throws HL7Exception {
    for (Exam exam : new Cohort(PERSONS, 7).exams().limit(60).toList()) {
      check(exam);
    }
  }

  /** So that the tests above are known to be able to fail. */
  @Test
  void refusesAMessageThatIsNotByTheStandard() {
    String message = WRITER.write(DemoRecords.all().get(0)).orThrow().text();
    String time = message.replaceFirst("(PID\\|1[^\\r]*)", "$1||13 March");
    assertThrows(HL7Exception.class, () -> parsed(time));
    String number = message.replaceFirst("\\|NM\\|([^|]*\\|[^|]*\\|)[^|]*", "|NM|$1high");
    assertThrows(HL7Exception.class, () -> parsed(number));
  }

  @Test
  void parsesAnswersWithTheirErrors() throws HL7Exception {
    byte[] sent =
        "MSH|^~\\&|EYE^1.2.3^ISO|QH|REC|QH|20260612104500||ORU^R01^ORU_R01|a\\T\\b|P|2.5.1\r"
            .getBytes(StandardCharsets.UTF_8);
    OffsetDateTime now = OffsetDateTime.parse("2026-06-12T10:45:01Z");
    Optional<V2Header> header = V2Header.of(sent);
    ACK good =
        (ACK)
            CONTEXT.getPipeParser().parse(Acknowledgement.accepted(header.orElseThrow()).text(now));
    assertEquals("AA", good.getMSA().getAcknowledgmentCode().getValue());
    assertEquals("a&b", good.getMSA().getMessageControlID().getValue());
    assertEquals("EYE", good.getMSH().getReceivingApplication().getNamespaceID().getValue());
    assertEquals("ISO", good.getMSH().getReceivingApplication().getUniversalIDType().getValue());
    for (V2Fault.Code code : V2Fault.Code.values()) {
      V2Fault fault = new V2Fault(code, 12, "seen", "wanted|this");
      ACK bad =
          (ACK) CONTEXT.getPipeParser().parse(Acknowledgement.rejected(header, fault).text(now));
      assertEquals("AR", bad.getMSA().getAcknowledgmentCode().getValue());
      assertEquals(ca.uhn.hl7v2.ErrorCode.errorCodeFor(code.number()).getMessage(), code.words());
      assertEquals(
          String.valueOf(code.number()), bad.getERR().getHL7ErrorCode().getIdentifier().getValue());
      assertEquals("MSH-12: wanted wanted|this", bad.getERR().getUserMessage().getValue());
    }
  }
}
