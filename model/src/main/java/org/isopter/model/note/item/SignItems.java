package org.isopter.model.note.item;

import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Concept;

/** Signs of a list, each an item under its own name: it is there, or it is not. */
final class SignItems {

  private SignItems() {}

  /** Returns the start of the item of one sign; the name of its list may stand before its own. */
  static Grammar.Draft named(Concept sign, String list) {
    String name = WrittenWords.of(sign);
    return Grammar.of(name, name + " R present L absent")
        .startsWith(Stream.of(Heading.of(name).afterWords(), Heading.of(list + " " + name)));
  }

  /** Returns the item of a whole list; it can only say why none of its signs was looked for. */
  static Grammar unnamed(
      Finding<?> finding, String list, Optional<? extends Slot<? extends Concept>> technique) {
    Grammar.Draft draft = Grammar.of(list, list + " R not done").startsWith(list).whole(finding);
    technique.ifPresent(draft::method);
    return draft.build(
        eye -> {
          throw NotRead.because("it is not said which sign");
        });
  }
}
