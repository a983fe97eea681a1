package org.isopter.mapper.foreign.observation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.side.SideWords;
import org.isopter.mapper.foreign.side.Sides;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.foreign.vocabulary.Words;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/** Parts of a refraction that stand apart: one component or one observation for each. */
final class Pieces {

  private static final String REFRACTION = "refraction";

  /** Dioptres, prism dioptres and degrees. */
  private static final Set<String> UNITS = Set.of("[diop]", "[p'diop]", "deg");

  private final Vocabulary vocabulary;
  private final Place observation;
  private final Finding<?> refraction;

  Pieces(Vocabulary vocabulary, Place observation) {
    this.vocabulary = vocabulary;
    this.observation = observation;
    this.refraction = vocabulary.catalogue().byId(REFRACTION).orElseThrow();
  }

  /** Says whether a place has the published code of a part of a refraction; nothing is taken. */
  boolean isPiece(Place holder) {
    return PartCode.of(vocabulary, holder, refraction).filter(PartCode::isCoded).isPresent();
  }

  /** Returns the components that are parts of refractions and not of the one observed itself. */
  List<Place> apart(List<Place> components, Meaning meaning) throws Refusal {
    Optional<String> name = meaning.finding();
    // A sphere that only words name may be that of glasses, unless a refraction is spoken of.
    boolean spokenOf = meaning.topic().equals(Optional.of(REFRACTION));
    List<Place> pieces = components.stream().filter(c -> isPiece(c, spokenOf)).toList();
    boolean sided = pieces.stream().anyMatch(c -> site(c).isPresent());
    boolean own = name.equals(Optional.of(REFRACTION)) && !sided;
    boolean other = name.isPresent() && !name.equals(Optional.of(REFRACTION));
    if (own || other || pieces.isEmpty()) {
      return List.of();
    }
    refuseGlasses(vocabulary, observation.value());
    return pieces;
  }

  private boolean isPiece(Place component, boolean spokenOf) {
    return isPiece(component)
        || (spokenOf && PartCode.of(vocabulary, component, refraction).isPresent());
  }

  /** Refuses a component in a unit of refractions that is not known: it may be the cylinder. */
  void refuseUnread(List<Place> components) throws Refusal {
    Habits habits = vocabulary.habits();
    for (Place component : components) {
      Optional<Place> quantity = component.child("valueQuantity");
      String code = quantity.map(q -> q.text("code")).orElse("");
      String unit = quantity.map(q -> q.text("unit")).orElse("");
      boolean part =
          habits.ucum(code).or(() -> habits.ucum(unit)).filter(UNITS::contains).isPresent();
      if (part && !isUnderstood(component)) {
        throw Refusal.of(
            Why.PART_UNFIT,
            component.at() + "/code",
            component.child("code").map(c -> RawJson.write(c.value())).orElse("no code"),
            "a part of a refraction that is known");
      }
    }
  }

  /**
   * Says whether a component has a code or a name of what is no part, or only follows from them.
   */
  private boolean isUnderstood(Place component) {
    Optional<Place> code = component.child("code");
    Words words = vocabulary.habits().words();
    boolean coded =
        code.stream()
            .flatMap(c -> Coding.of(c, vocabulary::knows, vocabulary).stream())
            .anyMatch(
                c -> words.isDerivedPart(c.token()) || vocabulary.effect(c.token()).isPresent());
    return coded
        || code.filter(c -> words.isDerivedPart(CodeText.words(c.text("text")))).isPresent();
  }

  /** Refuses what speaks of glasses and not of an eye, in its code or around it. */
  static void refuseGlasses(Vocabulary vocabulary, Raw resource) throws Refusal {
    for (String member : List.of("code", "method", "category", "device")) {
      List<PlacedLeaf> leaves = new ArrayList<>();
      PlacedLeaf.collect(resource.get(member).orElse(Raw.Obj.EMPTY), "/" + member, leaves);
      for (PlacedLeaf leaf : leaves) {
        boolean words = leaf.at().endsWith("/text") || leaf.at().endsWith("/display");
        String said = words ? leaf.value().string().orElse("") : "";
        Optional<String> other = vocabulary.habits().words().otherwise(said, REFRACTION);
        if (other.isPresent()) {
          String seen = "\"" + other.get() + "\"";
          throw Refusal.of(Why.CODES_DISAGREE, leaf.at(), seen, "a refraction that was measured");
        }
      }
    }
  }

  /** Returns the parts by the eye that each is of; every part must name its eye. */
  Map<Site, List<Place>> byEye(List<Place> pieces, List<Meaning.Side> around) throws Refusal {
    Map<Site, List<Place>> byEye = new LinkedHashMap<>();
    for (Place piece : pieces) {
      List<Meaning.Side> sides =
          SideWords.all(observation.ledger(), piece, observation, meaning(piece), around);
      Site site = Sides.agreed(sides, refraction, piece);
      byEye.computeIfAbsent(site, any -> new ArrayList<>()).add(piece);
    }
    return byEye;
  }

  /** Returns the refraction of an eye that its parts make together, and takes them. */
  Fact<?> joined(List<Place> pieces, Site eye) throws Refusal {
    Place first = pieces.get(0);
    Meaning meaning = meaning(first);
    Fact<?> fact =
        new SlotReader(vocabulary, first, meaning, pieces, List.of(), Optional.empty())
            .parts(refraction, eye);
    first.ledger().used(RuleId.PARTS_BY_EYE);
    return fact;
  }

  /** Returns what an observation is that is one part of a refraction. */
  Translation.Piece alone(List<Meaning.Side> around) throws Refusal {
    refuseGlasses(vocabulary, observation.value());
    Meaning meaning = meaning(observation);
    List<Meaning.Side> sides =
        SideWords.all(observation.ledger(), observation, observation, meaning, around);
    Sides.agreed(sides, refraction, observation);
    return new Translation.Piece(observation, meaning, sides);
  }

  /** Returns the refusal of an observation that only names others. */
  static Refusal onlyMembers() {
    return Refusal.of(Why.PANEL, "/hasMember", "members and no value", "a value");
  }

  private Meaning meaning(Place piece) throws Refusal {
    Meaning meaning = new Meaning();
    meaning.of(REFRACTION, piece.at() + "/code");
    site(piece).ifPresent(site -> meaning.side(site, piece.at() + "/code"));
    return meaning;
  }

  private Optional<Site> site(Place piece) {
    return PartCode.of(vocabulary, piece, refraction).flatMap(PartCode::site);
  }
}
