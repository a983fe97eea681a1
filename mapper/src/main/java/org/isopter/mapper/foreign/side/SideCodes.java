package org.isopter.mapper.foreign.side;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.model.value.Code;
import org.isopter.model.value.Site;

/** Takes codes and single words that name an eye, and notes what they say. */
final class SideCodes {

  /** A structure with its laterality in one expression of the SNOMED CT grammar. */
  private static final Pattern EXPRESSION =
      Pattern.compile("(\\d+)(?:\\|[^|]*\\|)?:272741003(?:\\|[^|]*\\|)?=(\\d+)(?:\\|[^|]*\\|)?");

  private final Vocabulary vocabulary;
  private final List<Meaning.Side> said;

  SideCodes(Vocabulary vocabulary, List<Meaning.Side> said) {
    this.vocabulary = vocabulary;
    this.said = said;
  }

  /** Takes the code of an eye. */
  boolean site(Coding coding) {
    Optional<Site> site = vocabulary.habits().site(coding.token());
    site.ifPresent(
        found -> {
          boolean ours = coding.token().equals(found.code().token());
          String rule = ours ? Ledger.CATALOGUE : RuleId.SIDE_BODY_SITE;
          coding.take(rule, ours ? Optional.of(found.code().display()) : Optional.empty());
          said.add(new Meaning.Side(found, coding.place().at(), rule));
        });
    return site.isPresent();
  }

  /** A local code that is the abbreviation of an eye; what its display says is read as words. */
  boolean localCode(Place coding) {
    Optional<Site> site =
        Coding.isLocal(coding) ? SideText.alone(coding.text("code")) : Optional.empty();
    site.ifPresent(
        found -> {
          coding.take(RuleId.SIDE_LOCAL_CODE, "code");
          said.add(new Meaning.Side(found, coding.at(), RuleId.SIDE_LOCAL_CODE));
        });
    return site.isPresent();
  }

  /** Says whether a code is that of an eye of either side. */
  boolean eitherEye(Coding coding) {
    return vocabulary.habits().isEye(coding.token());
  }

  /** Takes the code of a side. */
  boolean qualifier(Coding coding, String rule) {
    Optional<Site> side = vocabulary.habits().qualifier(coding.token());
    side.ifPresent(
        found -> {
          coding.take(rule, Optional.empty());
          said.add(new Meaning.Side(found, coding.place().at(), rule));
        });
    return side.isPresent();
  }

  /** Takes an expression of an eye and its side. */
  boolean expression(Coding coding) {
    String text = coding.place().text("code").replace(" ", "");
    Matcher parts = EXPRESSION.matcher(text);
    if (!coding.place().text("system").equals(Code.SNOMED) || !parts.matches()) {
      return false;
    }
    Optional<Site> side = vocabulary.habits().qualifier(Code.SNOMED + "|" + parts.group(2));
    if (!vocabulary.habits().isEye(Code.SNOMED + "|" + parts.group(1)) || side.isEmpty()) {
      return false;
    }
    coding.place().take(RuleId.SIDE_EXPRESSION, "system", "code");
    said.add(new Meaning.Side(side.get(), coding.place().at(), RuleId.SIDE_EXPRESSION));
    return true;
  }

  /** Takes the first of the members that is nothing but the name of an eye. */
  boolean word(Place holder, String rule, String... names) {
    for (String name : names) {
      Optional<Site> site = SideText.wholly(holder.text(name));
      if (site.isPresent()) {
        holder.take(rule, name);
        said.add(new Meaning.Side(site.get(), PlacedLeaf.step(holder.at(), name), rule));
        return true;
      }
    }
    return false;
  }

  /** Takes the letter of a side where an extension asks for nothing else. */
  boolean letter(Place extension, String rule) {
    for (String name : List.of("valueCode", "valueString")) {
      Optional<Site> site =
          switch (extension.text(name).strip()) {
            case "R", "r" -> Optional.of(Site.RIGHT);
            case "L", "l" -> Optional.of(Site.LEFT);
            default -> Optional.empty();
          };
      if (site.isPresent()) {
        extension.take(rule, name);
        said.add(new Meaning.Side(site.get(), PlacedLeaf.step(extension.at(), name), rule));
        return true;
      }
    }
    return false;
  }

  /** Says whether a code is that of an eye or a side. */
  boolean isSite(String token) {
    return vocabulary.habits().site(token).isPresent()
        || vocabulary.habits().isEye(token)
        || isQualifier(token);
  }

  /** Says whether a code is that of a side. */
  boolean isQualifier(String token) {
    return vocabulary.habits().qualifier(token).isPresent();
  }
}
