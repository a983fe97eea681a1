package org.isopter.model.letter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.api.Test;

final class HtmlPageTest {

  private static String page(String name, String note) {
    Header header =
        Header.of(
            Identifier.of("h-1"),
            Party.named(name),
            OffsetDateTime.parse("2026-03-02T09:30:00+01:00"));
    return Letter.html()
        .write(Summary.of(new Exam(header, NoteReader.standard().facts(note).orThrow())));
  }

  @Test
  void holdsTheRowsThePicturesAndTheCaution() {
    String page = page("Bram", "VA R 6/9 L 6/12; pupils R 4 mm L 3 mm dim");

    assertTrue(page.contains("<th scope=\"row\">Acuity</th><td>6/9</td><td>6/12</td>"), page);
    // Pupils, fields, discs and movements.
    assertEquals(4, page.split("<svg ", -1).length - 1);
    assertTrue(page.contains("<footer><p>" + Caution.TEXT.split("\n", -1)[0]), page);
  }

  @Test
  void turnsNoWordIntoAMark() {
    String page = page("<script>alert(1)</script> & \"co\"", "IOP R 14");

    assertFalse(page.contains("<script"), page);
    assertTrue(page.contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;co&quot;"), page);
  }

  @Test
  void leavesTheOtherFormsWithoutPictures() {
    for (Letter letter : List.of(Letter.text(), Letter.markdown())) {
      Header header =
          Header.of(
              Identifier.of("h-1"),
              Party.named("Bram"),
              OffsetDateTime.parse("2026-03-02T09:30:00+01:00"));
      Exam exam = new Exam(header, NoteReader.standard().facts("IOP R 14").orThrow());
      assertFalse(letter.write(Summary.of(exam)).contains("<svg"));
    }
  }
}
