package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.exam.Fact;
import org.isopter.model.shape.Finding;
import org.isopter.model.value.Site;

/** Parts of a refraction that stand apart: one component or one observation for each. */
final class Pieces {

  private static final String REFRACTION = "refraction";

  private final Vocabulary vocabulary;
  private final Place observation;
  private final Finding<?> refraction;

  Pieces(Vocabulary vocabulary, Place observation) {
    this.vocabulary = vocabulary;
    this.observation = observation;
    this.refraction = vocabulary.catalogue().byId(REFRACTION).orElseThrow();
  }

  /** Says whether a place has the code of a part of a refraction; nothing is taken. */
  boolean isPiece(Place holder) {
    return PartCode.of(vocabulary, holder, refraction).isPresent();
  }

  /** Returns the components that are parts of refractions and not of the one observed itself. */
  List<Place> apart(List<Place> components, Optional<String> name) {
    List<Place> pieces = components.stream().filter(this::isPiece).toList();
    boolean sided = pieces.stream().anyMatch(c -> site(c).isPresent());
    boolean own = name.equals(Optional.of(REFRACTION)) && !sided;
    boolean other = name.isPresent() && !name.equals(Optional.of(REFRACTION));
    return own || other ? List.of() : pieces;
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
    first.ledger().used("parts-by-eye");
    return fact;
  }

  /** Returns what an observation is that is one part of a refraction. */
  Translation.Piece alone(List<Meaning.Side> around) throws Refusal {
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
