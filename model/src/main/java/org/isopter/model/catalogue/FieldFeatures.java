package org.isopter.model.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Congruity;
import org.isopter.model.answer.sight.FieldBorder;
import org.isopter.model.answer.sight.FieldMethod;
import org.isopter.model.answer.sight.MissedSide;
import org.isopter.model.answer.sight.Sparing;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Values;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/** What a loss of field looks like, how far kinetic targets are seen, and attention to space. */
public final class FieldFeatures {

  static final Entries ENTRIES = new Entries();

  /** A direction from fixation in the field of the eye itself. */
  public enum Direction {
    TEMPORAL,
    SUPEROTEMPORAL,
    SUPERIOR,
    SUPERONASAL,
    NASAL,
    INFERONASAL,
    INFERIOR,
    INFEROTEMPORAL;

    private String key() {
      return name().toLowerCase(java.util.Locale.ROOT) + "-extent";
    }

    private String title() {
      return name().charAt(0) + name().substring(1).toLowerCase(java.util.Locale.ROOT) + " extent";
    }
  }

  /**
   * How far one moving target was seen.
   *
   * @param stimulus the target, in the notation of Goldmann
   * @param extents how far from fixation it was seen, in degrees, in each direction tested
   */
  public record Isopter(Term stimulus, Map<Direction, Quantity> extents) {

    public Isopter {
      extents = Keyed.copy(Direction.class, extents);
    }
  }

  private static final List<Term> STIMULI =
      Stream.of("V4e", "IV4e", "III4e", "II4e", "I4e", "I3e", "I2e", "I1e")
          .map(FieldFeatures::stimulus)
          .toList();

  private static final Part<Isopter, Term> STIMULUS =
      Part.required(
          "stimulus",
          "Goldmann stimulus",
          Shapes.oneOf(Answers.of("goldmann-stimulus", STIMULI), Term.class),
          Isopter::stimulus);

  private static final Map<Direction, Part<Isopter, Quantity>> EXTENTS =
      Keyed.parts(Direction.class, FieldFeatures::extent);

  /** The meridian at which a loss stops. */
  public static final Finding<FieldBorder> BORDER =
      ENTRIES.add(
          Finding.of("field-border", "Meridian at which a loss of field stops")
              .value(Shapes.oneOf(FieldBorder.class))
              .by(FieldMethod.class)
              .cite("AJNR 2007;28:3, table 1: what respects which meridian")
              .build());

  /** Whether the centre of a lost half is spared. */
  public static final Finding<Sparing> MACULA =
      ENTRIES.add(
          Finding.of("macular-sparing", "Macular part of a lost half of the field")
              .formerly(
                  Code.local("finding", "macular-sparing", "Centre of a lost half of the field"))
              .value(Shapes.oneOf(Sparing.class))
              .at(Site.PAIR)
              .by(FieldMethod.class)
              .cite("AJNR 2007;28:3, table 1")
              .note("Of losses of both eyes on one side.")
              .build());

  /** Whether the losses of the two eyes match. */
  public static final Finding<Congruity> CONGRUITY =
      ENTRIES.add(
          Finding.of("field-congruity", "Congruity of the losses of field")
              .value(Shapes.oneOf(Congruity.class))
              .at(Site.PAIR)
              .by(FieldMethod.class)
              .cite("AJNR 2007;28:3, table 1")
              .build());

  /** Whether the temporal crescent of a lost half is spared. */
  public static final Finding<Sparing> CRESCENT =
      ENTRIES.add(
          Finding.of("temporal-crescent", "Temporal crescent of the field")
              .value(Shapes.oneOf(Sparing.class))
              .by(FieldMethod.class)
              .cite("AJNR 2007;28:3, table 1")
              .build());

  /** How far one moving target is seen. */
  public static final Finding<Isopter> ISOPTER =
      ENTRIES.add(
          Finding.of("kinetic-isopter", "Isopter of a moving target")
              .value(Layout.ofParts(isopterParts(), FieldFeatures::isopter))
              .by(FieldMethod.class)
              .distinguishedBy(STIMULUS)
              .cite("notation of the targets after Goldmann, limits: common practice, no source")
              .note("Degrees from fixation; what was not tested in a direction is left out.")
              .build());

  /** The side that goes unseen when both are shown at once. */
  public static final Finding<MissedSide> EXTINCTION =
      ENTRIES.add(
          Finding.of("visual-extinction", "Visual extinction on double simultaneous stimulation")
              .formerly(
                  Code.local(
                      "finding", "visual-extinction", "Side missed when both are shown at once"))
              .value(Shapes.oneOf(MissedSide.class))
              .at(Site.PAIR)
              .cite("common practice, no source")
              .note("Each side alone is seen; a side that is never seen is a loss of field.")
              .build());

  /** The side that is not attended to. */
  public static final Finding<MissedSide> NEGLECT =
      ENTRIES.add(
          Finding.of("visual-neglect", "Visual neglect")
              .formerly(Code.local("finding", "visual-neglect", "Side that is not attended to"))
              .value(Shapes.oneOf(MissedSide.class))
              .at(Site.PAIR)
              .cite("common practice, no source")
              .build());

  private FieldFeatures() {}

  private static Term stimulus(String name) {
    String word = name.toLowerCase(java.util.Locale.ROOT);
    // Older versions wrote the capital letters of the notation.
    return new Term(
        word,
        Code.local("goldmann-stimulus", word, name),
        List.of(Code.local("goldmann-stimulus", name, name)));
  }

  private static Part<Isopter, Quantity> extent(Direction direction) {
    return Part.optional(
        direction.key(),
        direction.title(),
        Shapes.measure(Unit.DEGREE, "0", "110", 0),
        isopter -> Optional.ofNullable(isopter.extents().get(direction)));
  }

  private static List<Part<Isopter, ?>> isopterParts() {
    List<Part<Isopter, ?>> parts = new ArrayList<>(List.of(STIMULUS));
    parts.addAll(EXTENTS.values());
    return parts;
  }

  private static Isopter isopter(Values values) {
    return new Isopter(
        values.get(STIMULUS), Keyed.read(Direction.class, EXTENTS, values, Values::find));
  }
}
