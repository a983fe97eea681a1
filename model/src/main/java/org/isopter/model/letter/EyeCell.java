package org.isopter.model.letter;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Fact;
import org.isopter.model.text.FactText;
import org.isopter.model.text.FactWords;
import org.isopter.model.text.PlainWords;

/** What one eye showed of a subject; what shares technique, instrument and time is put together. */
final class EyeCell {

  private final Subject subject;
  private final OffsetDateTime performed;
  private final List<Group> groups = new ArrayList<>();

  /** Facts of one technique, instrument and time. */
  private record Group(String context, List<String> words) {

    boolean isShared() {
      return words.size() > 1 && !context.isEmpty();
    }

    String text() {
      String all = String.join("; ", words);
      if (context.isEmpty()) {
        return all;
      }
      return isShared() ? PlainWords.capital(context) + ": " + all : all + ", " + context;
    }
  }

  private EyeCell(Subject subject, OffsetDateTime performed) {
    this.subject = subject;
    this.performed = performed;
  }

  /** Returns the words for an eye; none where nothing was found. */
  static String of(EyeView eye, Subject subject) {
    EyeCell cell = new EyeCell(subject, eye.exam().exam().header().performed());
    subject.labels().keySet().stream().flatMap(eye::seen).forEach(seen -> cell.add(seen.fact()));
    return cell.text();
  }

  private void add(Fact<?> fact) {
    FactWords said = FactText.words(fact, performed);
    String words = subject.label(fact.finding()) + said.value(", ") + FactText.remarks(said);
    String context = FactText.context(said);
    if (context.equals(PlainWords.lower(subject.title()))) {
      context = "";
    }
    boolean same = !groups.isEmpty() && groups.get(groups.size() - 1).context().equals(context);
    if (same) {
      groups.get(groups.size() - 1).words().add(words);
    } else {
      groups.add(new Group(context, new ArrayList<>(List.of(words))));
    }
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
