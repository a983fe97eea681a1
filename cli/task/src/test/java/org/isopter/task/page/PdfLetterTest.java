package org.isopter.task.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Random;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.letter.Summary;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** A letter in PDF, held against ISO 19005-3 (level A) and ISO 14289-1 by veraPDF. */
class PdfLetterTest {

  private static final Path DEMO = Path.of("../../docs/demo");

  @BeforeAll
  static void start() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  private static Exam demo(String name) throws IOException {
    return new RecordReader(Catalogue.standard())
        .read(Files.readString(DEMO.resolve(name), StandardCharsets.UTF_8), RecordFormat.YAML)
        .orThrow();
  }

  private static byte[] pdf(Exam exam) {
    String page = SummaryForm.PDF.letter().detailed().write(Summary.of(exam));
    return SummaryForm.PDF.bytes(page);
  }

  private static List<String> failures(byte[] pdf, PDFAFlavour flavour) throws Exception {
    try (PDFAParser parser =
        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour)) {
      return Foundries.defaultInstance()
          .createValidator(flavour, false)
          .validate(parser)
          .getTestAssertions()
          .stream()
          .filter(assertion -> assertion.getStatus() == TestAssertion.Status.FAILED)
          .map(assertion -> assertion.getRuleId() + " " + assertion.getMessage())
          .toList();
    }
  }

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  private static int pages(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return document.getNumberOfPages();
    }
  }

  @Test
  void keepsToTheStandardsOfArchivesAndOfAccess() throws Exception {
    byte[] pdf = pdf(demo("02-net-mender.yaml"));
    assertEquals(List.of(), failures(pdf, PDFAFlavour.PDFA_3_A));
    assertEquals(List.of(), failures(pdf, PDFAFlavour.PDFUA_1));
  }

  @Test
  void keepsToThemWhateverWasExamined() throws Exception {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(4L));
    byte[] pdf = pdf(sampler.next());
    assertEquals(List.of(), failures(pdf, PDFAFlavour.PDFA_3_A));
    assertEquals(List.of(), failures(pdf, PDFAFlavour.PDFUA_1));
  }

  /** Else the two tests above could not fail. */
  @Test
  void thePlainestPdfKeepsToNeither() throws Exception {
    ByteArrayOutputStream plain = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      document.addPage(new PDPage());
      document.save(plain);
    }
    assertFalse(failures(plain.toByteArray(), PDFAFlavour.PDFA_3_A).isEmpty());
    assertFalse(failures(plain.toByteArray(), PDFAFlavour.PDFUA_1).isEmpty());
  }

  @Test
  void printsTheCautionOnEveryPage() throws IOException {
    byte[] pdf = pdf(demo("02-net-mender.yaml"));
    String start = Caution.TEXT.substring(0, 40);
    assertTrue(pages(pdf) > 1);
    assertEquals(pages(pdf), text(pdf).split(start, -1).length - 1);
  }

  @Test
  void saysWhatThePageInHtmlSays() throws IOException {
    String text = text(pdf(demo("02-net-mender.yaml")));
    assertTrue(text.contains("6/24 unaided"), text);
    assertTrue(text.contains("left, grade 3+"), text);
  }

  @Test
  void refusesACharacterThatItCannotPrint() {
    Exam exam =
        new Exam(
            Header.of(
                Identifier.of("e-1"),
                Party.of(Identifier.of("p-\uD83D\uDC41\u4E2D")),
                OffsetDateTime.parse("2026-03-02T09:00:00+01:00")),
            List.of());
    FaultException refused = assertThrows(FaultException.class, () -> pdf(exam));
    assertTrue(refused.getMessage().contains("U+"), refused.getMessage());
  }
}
