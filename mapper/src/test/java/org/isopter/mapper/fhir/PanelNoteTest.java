package org.isopter.mapper.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.value.Fault;
import org.junit.jupiter.api.Test;

/** The remark on a whole examination is one note of the panel. */
class PanelNoteTest {

  private static final FhirReader READER = new FhirReader(Catalogue.standard());

  @Test
  void refusesASecondNoteRatherThanLosingIt() {
    String json = FhirWriter.of(BundleKind.COLLECTION).write(remarked());
    assertEquals(remarked(), READER.read(json).orThrow());
    String two =
        json.replace("[{\"text\":\"Lying.\"}]", "[{\"text\":\"Lying.\"},{\"text\":\"Tired.\"}]");
    List<Fault> faults = READER.read(two).faults();
    assertTrue(
        faults.stream().anyMatch(f -> f.path().endsWith("note") && f.seen().equals("2 notes")),
        faults.toString());
  }

  private static Exam remarked() {
    Header header =
        new Header(
            Identifier.of("e-1"),
            Party.of(Identifier.of("p-1")),
            Optional.empty(),
            OffsetDateTime.parse("2026-03-02T09:30:00+01:00"),
            Status.FINAL,
            Optional.empty(),
            Optional.empty(),
            Optional.of("Lying."));
    return new Exam(header, List.of());
  }
}
