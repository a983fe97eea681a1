package org.isopter.model.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

final class DrawingTest {

  private static Exam exam(String note) {
    Header header =
        Header.of(
            Identifier.of("d-1"),
            Party.of(Identifier.of("p-1")),
            OffsetDateTime.parse("2026-03-02T09:30:00+01:00"));
    return NoteReader.exam(header, note).orThrow();
  }

  private static String svg(String note, String id) {
    return Drawing.of(exam(note)).stream()
        .filter(picture -> picture.id().equals(id))
        .findFirst()
        .orElseThrow()
        .svg();
  }

  private static Element xml(String svg) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    return factory
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(svg)))
        .getDocumentElement();
  }

  private static int count(String text, String part) {
    return text.split(Pattern.quote(part), -1).length - 1;
  }

  @Test
  void everyPictureIsXmlWithTitleAndDescription() throws Exception {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(161803));
    for (int i = 0; i < 200; i++) {
      for (Picture picture : Drawing.of(exams.next())) {
        Element svg = xml(picture.svg());
        assertEquals("img", svg.getAttribute("role"));
        assertEquals(picture.title(), svg.getElementsByTagName("title").item(0).getTextContent());
        assertEquals(
            picture.description(), svg.getElementsByTagName("desc").item(0).getTextContent());
      }
    }
  }

  @Test
  void drawsWhatWasNotExaminedAsSuch() {
    for (String note : List.of("IOP R 14", "VF not done", "pupils not done; disc not done")) {
      assertEquals(10, count(svg(note, "isopter-fields"), Svg.DOTTED), note);
      assertEquals(8, count(svg(note, "isopter-fields"), ">?<"), note);
      assertEquals(2, count(svg(note, "isopter-pupils"), Svg.DOTTED), note);
      assertEquals(2, count(svg(note, "isopter-discs"), Svg.DOTTED), note);
    }
  }

  @Test
  void saysWhyThereIsNoField() {
    String drawn = svg("VF declined", "isopter-fields");

    assertTrue(drawn.contains("Right eye. Field: declined. Blind spot: not recorded."), drawn);
  }

  @Test
  void drawsTheTemporalHalfOfTheLeftFieldOnTheLeft() {
    // As the person sees: the field temporal to the left eye is on the left; common practice.
    String drawn = svg("VF L ST absent", "isopter-fields");

    assertTrue(drawn.contains("M140 115 h-75 A75 75 0 0 1 140 40 z\" fill=\"#333333\""), drawn);
    assertEquals(1, count(drawn, "fill=\"#333333\""));
  }

  @Test
  void drawsTheTemporalHalfOfTheRightFieldOnTheRight() {
    String drawn = svg("VF R IT absent", "isopter-fields");

    assertTrue(drawn.contains("M420 115 h75 A75 75 0 0 1 420 190 z\" fill=\"#333333\""), drawn);
    assertEquals(1, count(drawn, "fill=\"#333333\""));
  }

  @Test
  void drawsPupilsToOneScale() {
    String drawn = svg("pupils R 4 mm L 2.5 mm dim", "isopter-pupils");

    assertTrue(drawn.contains("cx=\"140\" cy=\"72\" rx=\"14\" ry=\"14\" fill=\"#111111\""), drawn);
    assertTrue(drawn.contains("cx=\"420\" cy=\"72\" rx=\"8.75\" ry=\"8.75\""), drawn);
  }

  @Test
  void drawsNoPupilOfALightInWhichItWasNotMeasured() {
    String drawn = svg("pupil R 4 mm dim; pupil L 3 mm bright", "isopter-pupils");

    assertEquals(2, count(drawn, "fill=\"#111111\""));
    assertEquals(2, count(drawn, Svg.DOTTED));
  }

  @Test
  void namesTheEyeOfAnAfferentDefect() {
    assertTrue(svg("RAPD L 2+", "isopter-pupils").contains("Afferent defect: left, grade 2+"));
    assertTrue(svg("IOP R 14", "isopter-pupils").contains("Afferent defect: not recorded"));
  }

  @Test
  void drawsNoBloodWhereThereIsNone() {
    assertFalse(svg("disc R no haemorrhage", "isopter-discs").contains("#a3122a"));
    assertTrue(
        svg("disc R haemorrhage at 3 o'clock", "isopter-discs").contains("rotate(90 140 95)"));
  }

  @Test
  void saysThatThereIsNoEyeToExamine() {
    for (String id : List.of("isopter-pupils", "isopter-fields", "isopter-discs")) {
      String drawn = svg("globe L prosthesis; VA R 6/5", id);

      assertTrue(drawn.contains("Left eye. Eye in the socket: none, a prosthesis worn."), drawn);
      assertFalse(drawn.contains("Right eye. Eye in the socket"), drawn);
      assertTrue(drawn.contains(">\u2013</text>") || drawn.contains(">cup: \u2013<"), drawn);
    }
    assertFalse(svg("VA R 6/5", "isopter-discs").contains("Eye in the socket"));
  }

  @Test
  void callsNoPupilUnrecordedWhereThereIsNoEye() {
    String drawn = svg("globe L prosthesis; pupil R 4 mm dim", "isopter-pupils");

    assertTrue(drawn.contains(">no eye, dim light</text>"), drawn);
    assertFalse(drawn.contains("not recorded, dim light"), drawn);
  }

  @Test
  void drawsWhatWasRecordedOfAnEyeThatIsSaidToBeGone() {
    String drawn = svg("globe L prosthesis; pupil L 4 mm dim", "isopter-pupils");

    assertTrue(drawn.contains("prosthesis worn. Size: 4 mm in dim light."), drawn);
  }

  @Test
  void saysACupOfNoStatedDirectionAndDrawsNone() {
    String drawn = svg("CDR R 0.4", "isopter-discs");

    assertTrue(drawn.contains("Right eye. Swelling: not recorded."), drawn);
    assertTrue(drawn.contains("Cup-disc, direction not stated: 0.4"), drawn);
    assertTrue(drawn.contains(">cup: 0.4</text>"), drawn);
    assertTrue(drawn.contains(">cup: ?</text>"), "nothing is known of the left");
    assertFalse(drawn.contains("fill-opacity=\"0.15\""), drawn);
  }

  @Test
  void saysThatOfSeveralResultsNoneIsDrawn() {
    String lamp = "disc L haemorrhage at 3 o'clock slit lamp";
    String drawn =
        svg(lamp + "; disc L haemorrhage at 9 o'clock direct ophthalmoscope", "isopter-discs");

    assertFalse(drawn.contains("#a3122a"), drawn);
    assertTrue(drawn.contains("More than one result: none of them is drawn"), drawn);
  }

  @Test
  void drawsACupOnlyWhereBothRatiosAreKnown() {
    String both = svg("CDR v L 0.6; CDR h L 0.5", "isopter-discs");
    assertTrue(both.contains("cx=\"420\" cy=\"95\" rx=\"27.5\" ry=\"33\""), both);
    String one = svg("CDR v L 0.6", "isopter-discs");
    assertTrue(one.contains("M420 62 v66"), one);
    assertFalse(one.contains("fill-opacity"), one);
  }

  private static Picture seen(String note, SeenBy view, int index) {
    return Drawing.of(exam(note), view).get(index);
  }

  @Test
  void drawsTheGradeWhereTheEyeWouldLook() {
    // As the examiner sees: the person's right is on the left; common practice.
    String usual = svg("EOM R abduction -2, rest full", "isopter-movements");
    assertTrue(
        usual.contains(
            "<text x=\"94\" y=\"119\" text-anchor=\"middle\" fill=\"currentColor\">\u22122<"),
        usual);
    assertEquals(1, count(usual, "\u22122<"));
    // The nine of the left eye, and straight ahead, which was not spoken of.
    assertEquals(10, count(usual, Svg.DOTTED));

    String person = seen("EOM R abduction -2, rest full", SeenBy.PERSON, 3).svg();
    assertTrue(
        person.contains(
            "<text x=\"466\" y=\"119\" text-anchor=\"middle\" fill=\"currentColor\">\u22122<"),
        person);
  }

  @Test
  void drawsNoMovementThatWasNotSpokenOf() {
    for (String note : List.of("IOP R 14", "EOM not done")) {
      String drawn = svg(note, "isopter-movements");
      assertEquals(18, count(drawn, Svg.DOTTED), note);
      assertEquals(18, count(drawn, ">?<"), note);
      assertEquals(0, count(drawn, ">full<"), note);
    }
  }

  @Test
  void tellsTooLittleFromTooMuch() {
    String drawn = svg("EOM L adduction +2", "isopter-movements");

    assertTrue(drawn.contains(">+2<"), drawn);
    assertEquals(0, count(drawn, "fill-opacity"));
    assertEquals(1, count(drawn, "stroke-dasharray=\"7 3\""));
  }

  @Test
  void mirrorsFieldsForTheExaminer() {
    Picture drawn = seen("VF R IT absent", SeenBy.EXAMINER, 1);

    // The temporal half of the right eye lies on the examiner's left.
    assertTrue(
        drawn.shapes().contains("M140 115 h-75 A75 75 0 0 0 140 190 z\" fill=\"#333333\""),
        drawn.shapes());
    assertTrue(drawn.title().endsWith("as the examiner sees them: right eye on the left"));
  }

  @Test
  void saysTheSameOfAnEyeFromEverySide() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(141421));
    for (int i = 0; i < 100; i++) {
      Exam exam = exams.next();
      List<String> usual = Drawing.of(exam).stream().map(Picture::description).toList();
      for (SeenBy view : SeenBy.values()) {
        assertEquals(usual, Drawing.of(exam, view).stream().map(Picture::description).toList());
      }
    }
  }
}
