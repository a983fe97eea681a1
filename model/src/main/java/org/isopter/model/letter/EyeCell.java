package org.isopter.model.letter;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Fact;
import org.isopter.model.text.FactText;
import org.isopter.model.text.FactWords;
import org.isopter.model.text.PlainWords;
import org.isopter.model.text.ReadingText;
import org.isopter.model.value.Acuity;

/** What one eye showed of a subject; what shares technique, instrument and time is put together. */
final class EyeCell {

  private final EyeView eye;
  private final Subject subject;
  private final OffsetDateTime performed;
  private final List<Group> groups = new ArrayList<>();

  /**
   * A fact in words.
   *
   * @param whole all that is said
   * @param seen the acuity alone; of all else what is said
   * @param conditions what an acuity was seen through, and on which chart; empty for all else
   */
  private record Item(String whole, String seen, String conditions) {}

  /** Facts of one technique, instrument and time. */
  private record Group(String context, List<Item> items) {

    boolean isShared() {
      return items.size() > 1 && !context.isEmpty();
    }

    /** Readings made under one set of conditions stand before them together. */
    private List<String> words() {
      List<String> words = new ArrayList<>();
      for (int from = 0; from < items.size(); ) {
        int to = from + 1;
        while (to < items.size() && isAlike(items.get(from), items.get(to))) {
          to++;
        }
        words.add(words(items.subList(from, to)));
        from = to;
      }
      return words;
    }

    private static boolean isAlike(Item one, Item other) {
      return !one.conditions().isEmpty() && one.conditions().equals(other.conditions());
    }

    private static String words(List<Item> alike) {
      Item first = alike.get(0);
      return alike.size() == 1
          ? first.whole()
          : String.join(", ", alike.stream().map(Item::seen).toList())
              + (alike.size() == 2 ? ", both " : ", all ")
              + first.conditions();
    }

    String text() {
      String all = String.join("; ", words());
      if (context.isEmpty()) {
        return all;
      }
      return isShared() ? PlainWords.capital(context) + ": " + all : all + ", " + context;
    }
  }

  private EyeCell(EyeView eye, Subject subject) {
    this.eye = eye;
    this.subject = subject;
    this.performed = eye.exam().exam().header().performed();
  }

  /** Returns the words for an eye; none where nothing was found. */
  static String of(EyeView eye, Subject subject) {
    EyeCell cell = new EyeCell(eye, subject);
    subject.labels().keySet().stream().flatMap(eye::seen).forEach(seen -> cell.add(seen.fact()));
    return cell.text();
  }

  private void add(Fact<?> fact) {
    FactWords said = FactText.words(fact, performed);
    Item item = item(subject.label(fact.finding()), fact, said);
    String context = FactText.context(said);
    if (context.equals(PlainWords.lower(subject.title()))) {
      context = "";
    }
    boolean same = !groups.isEmpty() && groups.get(groups.size() - 1).context().equals(context);
    if (same) {
      groups.get(groups.size() - 1).items().add(item);
    } else {
      groups.add(new Group(context, new ArrayList<>(List.of(item))));
    }
  }

  private Item item(String label, Fact<?> fact, FactWords said) {
    String whole = label + said.value(", ") + FactText.remarks(said);
    return fact.outcome()
        .ifFound()
        .filter(value -> said.remarks().isEmpty())
        .filter(AcuityReading.class::isInstance)
        .map(AcuityReading.class::cast)
        .map(acuity -> item(label, acuity, whole))
        .orElseGet(() -> new Item(whole, whole, ""));
  }

  private Item item(String label, AcuityReading acuity, String whole) {
    String seen = label + ReadingText.seen(acuity);
    String conditions = ReadingText.conditions(acuity);
    return isOfTheOnlyAcuity(acuity, conditions)
        ? new Item(seen, seen, "")
        : new Item(whole, seen, conditions);
  }

  /** What did not improve is the acuity beside it, where there is one, and it was seen alike. */
  private boolean isOfTheOnlyAcuity(AcuityReading hole, String conditions) {
    return hole.acuity() instanceof Acuity.NotImproved
        && eye.only(Acuities.DISTANCE)
            .filter(far -> far.fact().remarks().isEmpty())
            .map(far -> ReadingText.conditions(far.value()))
            .filter(far -> far.equals(conditions) || far.startsWith(conditions + ", "))
            .isPresent();
  }

  /** A technique that is named first must not seem to reach over what stands behind its group. */
  private String text() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < groups.size(); i++) {
      String words = groups.get(i).text();
      boolean apart = i > 0 && (groups.get(i - 1).isShared() || groups.get(i).isShared());
      if (i > 0) {
        text.append(apart ? ". " : "; ");
      }
      text.append(apart ? PlainWords.capital(words) : words);
    }
    return text.toString();
  }
}
