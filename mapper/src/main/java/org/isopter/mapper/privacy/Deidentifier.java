package org.isopter.mapper.privacy;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;

/**
 * Takes the identity out of an examination: pseudonyms for identifiers, all times of a person moved
 * by the same number of days, ages from 90 on as one; no names, no examiner, no instrument and,
 * unless asked for, no free text.
 *
 * <p>What is left is still about one person: a rare finding or a rare course may be known again.
 *
 * <p>Safe for use by several threads at once.
 */
public final class Deidentifier {

  /** Times move so far that no one takes them for real: by a hundred years and more. */
  private static final int LEAST_DAYS = 36_525;

  /** And by up to ten years more, which differ from person to person. */
  private static final int SPREAD = 3_653;

  private final SecretKey key;
  private final boolean freeText;

  /**
   * Makes one.
   *
   * @param freeText whether remarks stay
   */
  public Deidentifier(SecretKey key, boolean freeText) {
    this.key = key;
    this.freeText = freeText;
  }

  /** Returns the examination without the identity of the person. */
  public PooledExam apply(PooledExam pooled) {
    Exam exam = pooled.exam();
    String person = person(exam.header().subject());
    int days = LEAST_DAYS + key.number("days", person, SPREAD);
    Header header = header(exam.header(), person, days);
    List<Fact<?>> facts = exam.facts().stream().<Fact<?>>map(fact -> fact(fact, days)).toList();
    return pooled.with(new Exam(header, facts), pooled.person().pooled());
  }

  private Header header(Header header, String person, int days) {
    return new Header(
        examination(header.id()),
        Party.of(pseudonym("p", "person", person)),
        Optional.empty(),
        moved(header.performed(), days),
        header.status(),
        header.setting(),
        header.amends().map(this::examination),
        header.remark().filter(any -> freeText));
  }

  private <V> Fact<V> fact(Fact<V> fact, int days) {
    Fact<V> moved = fact.at().map(time -> fact.at(moved(time, days))).orElse(fact);
    return moved.withoutDevice().remarks(freeText ? fact.remarks() : List.of());
  }

  private Identifier examination(Identifier id) {
    return pseudonym("e", "examination", id.toString());
  }

  private Identifier pseudonym(String letter, String kind, String name) {
    return Identifier.of(letter + key.pseudonym(kind, name));
  }

  private static OffsetDateTime moved(OffsetDateTime time, int days) {
    return time.plusDays(days);
  }

  /** A person is known by the identifier where there is one; a name may be written in two ways. */
  private static String person(Party subject) {
    return subject
        .identifier()
        .map(id -> "id " + id)
        .orElseGet(() -> "name " + subject.name().orElseThrow());
  }
}
