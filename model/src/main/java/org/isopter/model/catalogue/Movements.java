package org.isopter.model.catalogue;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.DoubleVision;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.answer.movement.NystagmusKind;
import org.isopter.model.answer.movement.Separation;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Values;
import org.isopter.model.finding.When;
import org.isopter.model.value.Code;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;

/** Eye movements, double vision and nystagmus. */
public final class Movements {

  static final Entries ENTRIES = new Entries();

  /**
   * How far an eye moves in each direction.
   *
   * @param grades 0 is full, -1 to -4 too little (-4: not past the midline), +1 to +4 too much; a
   *     direction that is not there was not spoken of
   */
  public record Ductions(Map<GazeDirection, Outcome<Integer>> grades) {

    public Ductions {
      grades = Keyed.copy(GazeDirection.class, grades);
    }
  }

  /**
   * Double vision.
   *
   * @param kind whether there is any, and of which kind
   * @param separation how the images lie to each other, when stated
   * @param worst the gaze in which they lie farthest apart, when stated
   * @param doubling the eye that doubles by itself, of a monocular one, when stated
   */
  public record Diplopia(
      DoubleVision kind,
      Optional<Separation> separation,
      Optional<GazeDirection> worst,
      Optional<Term> doubling) {

    /** Makes one that does not say which eye doubles by itself. */
    public Diplopia(
        DoubleVision kind, Optional<Separation> separation, Optional<GazeDirection> worst) {
      this(kind, separation, worst, Optional.empty());
    }
  }

  /**
   * Quick movements of the eyes.
   *
   * @param quality how they go
   * @param direction along which line, when stated
   */
  public record Saccades(Term quality, Optional<Term> direction) {}

  /**
   * Nystagmus.
   *
   * @param kind the kind, or none
   * @param fast the direction of the fast phase, when stated
   * @param seenIn the gaze in which it is seen, when stated
   */
  public record Nystagmus(
      NystagmusKind kind, Optional<GazeDirection> fast, Optional<GazeDirection> seenIn) {}

  private static final Map<GazeDirection, Part<Ductions, Integer>> GAZES =
      Keyed.parts(GazeDirection.class, Movements::gaze);

  private static final Set<DoubleVision> SEEN_DOUBLE =
      Set.of(DoubleVision.BINOCULAR, DoubleVision.MONOCULAR);

  private static final Set<NystagmusKind> SOME_NYSTAGMUS =
      EnumSet.complementOf(EnumSet.of(NystagmusKind.NONE));

  private static final Part<Diplopia, Separation> SEPARATION =
      Part.optional(
          "separation",
          "Separation of the images",
          Shapes.oneOf(Separation.class),
          Diplopia::separation);

  private static final Part<Diplopia, GazeDirection> WORST =
      Part.optional(
          "worst-gaze",
          "Gaze in which the images lie farthest apart",
          Shapes.oneOf(GazeDirection.class),
          Diplopia::worst);

  private static final Part<Diplopia, Term> DOUBLING =
      Part.optional(
          "doubling-eye",
          "Eye that doubles by itself",
          Shapes.oneOfWords("doubling-eye", "right", "left", "each"),
          Diplopia::doubling);

  private static final Part<Saccades, Term> SACCADE_LINE =
      Part.optional(
          "saccade-direction",
          "Direction of the saccades",
          Shapes.oneOfWords("saccade-direction", "horizontal", "vertical"),
          Saccades::direction);

  /** No eye beats straight ahead. */
  private static final List<GazeDirection> BEATS =
      Stream.of(GazeDirection.values()).filter(gaze -> gaze != GazeDirection.PRIMARY).toList();

  private static final Part<Nystagmus, GazeDirection> FAST =
      Part.optional(
          "fast-phase",
          "Direction of the fast phase",
          Shapes.oneOf(Answers.of("fast-phase-direction", BEATS), GazeDirection.class),
          Nystagmus::fast);

  private static final Part<Nystagmus, GazeDirection> SEEN_IN =
      Part.optional(
          "seen-in-gaze",
          "Gaze in which it is seen",
          Shapes.oneOf(GazeDirection.class),
          Nystagmus::seenIn);

  /** How far each eye moves in each direction. */
  public static final Finding<Ductions> DUCTIONS =
      ENTRIES.add(
          Finding.of("eye-movements", "Movements of the eye")
              .code(Code.snomed("31763002", "Ocular motility observable (observable entity)"))
              .value(Layout.ofParts(List.copyOf(GAZES.values()), Movements::ductions))
              .cite(
                  "grades -1 to -4: Leite 2020, J Ophthalmol 2020:9758153; overaction: common practice, no"
                      + " source")
              .note("Right and left are the person's own, for either eye.")
              .build());

  /** Double vision. */
  public static final Finding<Diplopia> DIPLOPIA =
      ENTRIES.add(
          Finding.of("double-vision", "Double vision")
              .codeWhen(
                  new When.Value(List.of(DoubleVision.BINOCULAR, DoubleVision.MONOCULAR)),
                  Code.snomed("24982008", "Diplopia (disorder)"))
              .value(
                  Layout.of(
                          Shapes.oneOf(DoubleVision.class),
                          Diplopia::kind,
                          List.of(SEPARATION, WORST, DOUBLING),
                          (kind, parts) ->
                              new Diplopia(
                                  kind,
                                  parts.find(SEPARATION),
                                  parts.find(WORST),
                                  parts.find(DOUBLING)))
                      .rules(
                          new Rule.OnlyWith("separation", SEEN_DOUBLE),
                          new Rule.OnlyWith("worst-gaze", SEEN_DOUBLE),
                          new Rule.OnlyWith("doubling-eye", Set.of(DoubleVision.MONOCULAR))))
              .at(Site.PAIR)
              .cite("common practice, no source")
              .build());

  /** Nystagmus. */
  public static final Finding<Nystagmus> NYSTAGMUS =
      ENTRIES.add(
          Finding.of("nystagmus", "Nystagmus")
              .codeWhen(
                  new When.Value(List.copyOf(SOME_NYSTAGMUS)),
                  Code.snomed("563001", "Nystagmus (disorder)"))
              .value(
                  Layout.of(
                          Shapes.oneOf(NystagmusKind.class),
                          Nystagmus::kind,
                          List.of(FAST, SEEN_IN),
                          (kind, parts) ->
                              new Nystagmus(kind, parts.find(FAST), parts.find(SEEN_IN)))
                      .rules(
                          new Rule.OnlyWith("fast-phase", SOME_NYSTAGMUS),
                          new Rule.OnlyWith("seen-in-gaze", SOME_NYSTAGMUS)))
              .at(Site.EACH_OR_BOTH)
              .cite("common practice, no source")
              .build());

  /** Pain on moving the eye. */
  public static final Finding<Presence> PAIN =
      ENTRIES.add(
          Finding.of("pain-on-movement", "Pain on eye movement")
              .value(Shapes.oneOf(Presence.class))
              .cite("common practice, no source")
              .build());

  /** Saccades. */
  public static final Finding<Saccades> SACCADES =
      ENTRIES.add(
          Finding.of("saccades", "Saccades")
              .value(
                  Layout.of(
                      Shapes.oneOfWords(
                          "saccade-quality", "accurate", "slow", "too-short", "too-long", "absent"),
                      Saccades::quality,
                      List.of(SACCADE_LINE),
                      (quality, parts) -> new Saccades(quality, parts.find(SACCADE_LINE))))
              .at(Site.EACH_OR_BOTH)
              .distinguishedBy(SACCADE_LINE)
              .cite("common practice, no source")
              .build());

  private Movements() {}

  private static Part<Ductions, Integer> gaze(GazeDirection gaze) {
    return Part.orAbsent(
        gaze.word(),
        gaze.code().display(),
        Shapes.count(-4, 4),
        moves -> Optional.ofNullable(moves.grades().get(gaze)));
  }

  private static Ductions ductions(Values values) {
    return new Ductions(Keyed.read(GazeDirection.class, GAZES, values, Values::outcome));
  }
}
