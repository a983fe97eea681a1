package org.isopter.model.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.NoteWriter;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.Test;

/** What is pasted into a chart reads back as the same facts. */
class ChartNoteTest {

  private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");
  private static final NoteReader READER = NoteReader.performed(DAY);
  private static final long SEED = 20260302L;

  private static Exam exam(List<Fact<?>> facts) {
    return new Exam(Header.of(Identifier.of("e-1"), Party.of(Identifier.of("p-1")), DAY), facts);
  }

  private static Exam read(String note) {
    return exam(READER.facts(note).orThrow());
  }

  /** Whatever an examination holds, the text reads as its facts, or says them in words alone. */
  @Test
  void readsBackAsTheSameFacts() {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(SEED));
    int said = 0;
    int inWords = 0;
    for (int i = 0; i < 100; i++) {
      Exam exam = exam(plain(sampler.next().facts()));
      ChartNote note = ChartNote.of(exam);
      Note again = READER.read(note.text());
      List<Fact<?>> rest = new ArrayList<>(exam.facts());
      again.facts().forEach(fact -> assertTrue(rest.remove(fact), () -> fact + " in " + note));
      assertEquals(rest.size(), note.words().size(), () -> SEED + ": " + note);
      assertEquals(List.of(), READER.read(note.shorthand()).unread());
      said += again.facts().size();
      inWords += rest.size();
    }
    assertTrue(said > 250 && inWords > 25, said + " said, " + inWords + " in words");
  }

  /** Half of the facts without what shorthand has no words for. */
  private static List<Fact<?>> plain(List<Fact<?>> facts) {
    List<Fact<?>> some = new ArrayList<>();
    for (Fact<?> fact : facts) {
      boolean bare = some.size() % 4 != 3;
      some.add(bare ? fact.withoutTime().withoutDevice().remarks(List.of()) : fact);
    }
    return some;
  }

  @Test
  void joinsTheEyesAndWhatIsSaidOfEach() {
    assertEquals(
        """
        VA sc R 6/9 L 6/6-1
        PERRLA; pupil bright each 3 mm
        no RAPD
        disc R colour pink, margin clear L colour pale, margin clear
        IOP GAT R 14 L 15
        EOM full; no diplopia; no nystagmus
        """,
        ChartNote.of(
                read(
                    """
                    VA sc R 6/9 L 6/6-1
                    PERRLA; pupils bright R 3 mm L 3 mm; no RAPD
                    disc R clear margin, pink, L clear margin, pale
                    IOP R 14 L 15 GAT
                    EOM full; no diplopia; no nystagmus
                    """))
            .text());
  }

  @Test
  void isFarShorterThanALineForEachFact() {
    Exam exam = read("R 6/6 L 6/6; PERRLA; no RAPD; VF each full; disc each normal; EOM full");
    String lines = NoteWriter.write(exam).orThrow();
    assertTrue(ChartNote.of(exam).text().length() * 3 < lines.length(), lines);
    assertEquals(
        Set.copyOf(exam.facts()), new HashSet<>(READER.read(ChartNote.of(exam).text()).facts()));
  }

  @Test
  void saysInWordsWhatShorthandCannotSayAndReadsNothingOfIt() {
    Fact<?> remarked =
        Fact.of(Discs.UNDIRECTED_CUP, Site.RIGHT, new BigDecimal("0.3"))
            .remarks(List.of("IOP R 14; no RAPD\nVA L 6/6", "Today IOP L 15. Now 6/9"));
    ChartNote note = ChartNote.of(exam(List.of(remarked)));
    assertEquals("", note.shorthand());
    assertTrue(note.words().get(0).startsWith("right eye, "), note.text());
    assertEquals(List.of(), READER.read(note.text()).facts());
  }

  @Test
  void saysNothingOfAnEmptyExamination() {
    assertEquals("", ChartNote.of(exam(List.of())).text());
  }
}
