package org.isopter.mapper.foreign.observation;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.CodedStatement;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.PlacedLeaf;

/** Takes what the words of a code say where no coding of it is known. */
final class CodeNames {

  private final Vocabulary vocabulary;
  private final CodeText text;
  private final WordsBeside beside;

  CodeNames(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.text = new CodeText(vocabulary);
    this.beside = new WordsBeside(vocabulary);
  }

  /** Adds what the text says, else the display of a local coding. */
  void add(Meaning meaning, Place code) throws Refusal {
    if (titled(meaning, code, code, "text")) {
      return;
    }
    for (Place coding : code.list("coding")) {
      if (Coding.isLocal(coding) && titled(meaning, code, coding, "display")) {
        return;
      }
    }
  }

  private boolean titled(Meaning meaning, Place code, Place place, String name) throws Refusal {
    Optional<Effect> effect = vocabulary.titled(SideText.without(place.text(name)));
    Optional<List<Effect>> said =
        effect.isPresent() ? effect.map(List::of) : text.read(SideText.without(place.text(name)));
    if (said.isEmpty()) {
      return namedCode(meaning, code, place, name);
    }
    if (!beside.leavesOpen(code, said.get().get(0))) {
      return false;
    }
    if (effect.isPresent()) {
      meaning.add(effect.get(), PlacedLeaf.step(place.at(), name));
      place.take(RuleId.CODE_TEXT, name);
      return true;
    }
    for (Effect each : said.get()) {
      meaning.add(each, PlacedLeaf.step(place.at(), name));
      place.take(RuleId.CODE_WORDS, name);
    }
    return true;
  }

  /** Words may also be the name of a group of findings, or of a finding that is a code itself. */
  private boolean namedCode(Meaning meaning, Place code, Place place, String name) throws Refusal {
    String words = CodeText.words(SideText.without(place.text(name)));
    Optional<String> token = vocabulary.habits().words().named(words);
    boolean alone = code.list("coding").stream().allMatch(Coding::isLocal);
    if (token.isEmpty() || !alone) {
      return false;
    }
    Optional<CodedStatement> statement = token.flatMap(vocabulary.habits()::statement);
    if (statement.isPresent()) {
      meaning.statement(statement.get(), PlacedLeaf.step(place.at(), name));
    } else {
      Effect group = token.flatMap(vocabulary.habits()::group).orElseThrow();
      meaning.group(group, PlacedLeaf.step(place.at(), name));
    }
    place.take(RuleId.CODE_TEXT, name);
    return true;
  }
}
