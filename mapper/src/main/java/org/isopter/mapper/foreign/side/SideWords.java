package org.isopter.mapper.foreign.side;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.model.value.Site;

/** The eye in words: a last resort where no code names it, and a check where one does. */
public final class SideWords {

  private static final Pattern GAZE = Pattern.compile("(?i)gaze|version|blick|regard|mirada");

  private SideWords() {}

  /**
   * Returns all that is said of the eye of a holder, codes first.
   *
   * @throws Refusal when a word may name a side and is not understood
   */
  public static List<Meaning.Side> all(
      Ledger ledger, Place holder, Place observation, Meaning meaning, List<Meaning.Side> around)
      throws Refusal {
    List<Meaning.Side> said = new ArrayList<>(meaning.sides());
    boolean component = !holder.at().equals(observation.at());
    for (Meaning.Side side : around) {
      // A panel of both eyes holds components of either.
      boolean wider = component && side.site() == Site.BOTH && !meaning.sides().isEmpty();
      if (!wider) {
        said.add(side);
      }
    }
    if (around.isEmpty() && !meaning.sides().isEmpty()) {
      ledger.used("side-in-code");
    }
    Map<String, Set<Site>> words = words(holder, observation, component);
    if (said.isEmpty()) {
      return lastResort(ledger, observation, words);
    }
    refuseOthers(said, words);
    refuseOthers(said, signs(holder));
    refuseOthers(said, letters(holder));
    return said;
  }

  /** Returns the eyes that letters in the names of a code may stand for, such as the L of IOP L. */
  private static Map<String, Set<Site>> letters(Place holder) throws Refusal {
    Map<String, Set<Site>> letters = new LinkedHashMap<>();
    Optional<Place> code = holder.child("code");
    if (code.isPresent()) {
      concept(code.get(), SideWords::hinted, letters);
    }
    return letters;
  }

  /** A direction of gaze is not a side. */
  private static Set<Site> hinted(String text) {
    Set<Site> sites = EnumSet.noneOf(Site.class);
    sites.addAll(SideText.ofLetters(text));
    if (!GAZE.matcher(text).find()) {
      sites.addAll(SideText.ofWords(text));
    }
    return sites;
  }

  /** Returns the eyes in codes such as IOP_OS, which a department gives and nobody else knows. */
  private static Map<String, Set<Site>> signs(Place holder) {
    Map<String, Set<Site>> signs = new LinkedHashMap<>();
    for (Place code : holder.child("code").stream().toList()) {
      for (Place coding : code.list("coding")) {
        Set<Site> sites = SideText.in(coding.text("code").replace('_', ' '));
        if (!sites.isEmpty() && Coding.isLocal(coding)) {
          signs.put(PlacedLeaf.step(coding.at(), "code"), sites);
        }
      }
    }
    return signs;
  }

  private static Map<String, Set<Site>> words(Place holder, Place observation, boolean component)
      throws Refusal {
    Map<String, Set<Site>> words = new LinkedHashMap<>();
    Optional<Place> site = component ? Optional.empty() : observation.child("bodySite");
    if (site.isPresent()) {
      concept(site.get(), SideText::ofSite, words);
    }
    Optional<Place> code = holder.child("code");
    if (code.isPresent()) {
      concept(code.get(), SideText::in, words);
    }
    return words;
  }

  private static void concept(
      Place concept, Function<String, Set<Site>> reading, Map<String, Set<Site>> words)
      throws Refusal {
    put(PlacedLeaf.step(concept.at(), "text"), concept.text("text"), reading, words);
    for (Place coding : concept.list("coding")) {
      put(PlacedLeaf.step(coding.at(), "display"), coding.text("display"), reading, words);
    }
  }

  private static void put(
      String at, String text, Function<String, Set<Site>> reading, Map<String, Set<Site>> words)
      throws Refusal {
    if (SideText.denies(text)) {
      throw Refusal.of(Why.SIDES_DISAGREE, at, "an eye that is named as not this one", "one eye");
    }
    Set<Site> sites = reading.apply(text);
    if (!sites.isEmpty()) {
      words.put(at, sites);
    }
  }

  private static List<Meaning.Side> lastResort(
      Ledger ledger, Place observation, Map<String, Set<Site>> words) throws Refusal {
    Set<Site> sites = words.values().stream().flatMap(Set::stream).collect(Collectors.toSet());
    if (sites.size() > 1) {
      throw Refusal.of(Why.SIDES_DISAGREE, observation.at(), words.toString(), "one eye");
    }
    Optional<Site> only = sites.stream().findFirst();
    if (only.isEmpty()) {
      return List.of();
    }
    ledger.used("side-text");
    String at = words.keySet().iterator().next();
    return List.of(new Meaning.Side(only.get(), at, "side-text"));
  }

  private static void refuseOthers(List<Meaning.Side> said, Map<String, Set<Site>> words)
      throws Refusal {
    for (Map.Entry<String, Set<Site>> entry : words.entrySet()) {
      for (Meaning.Side side : said) {
        // The title of a field may name both eyes; a place in the body that does is not one eye.
        boolean several =
            entry.getKey().startsWith("/bodySite")
                && side.site() != Site.BOTH
                && entry.getValue().size() > 1;
        if (several || !entry.getValue().contains(side.site())) {
          throw Refusal.of(
              Why.SIDES_DISAGREE,
              entry.getKey(),
              entry.getValue() + " in words, " + side.site().word() + " at " + side.at(),
              "one eye");
        }
      }
    }
  }
}
