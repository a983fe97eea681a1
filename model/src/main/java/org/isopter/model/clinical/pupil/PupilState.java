package org.isopter.model.clinical.pupil;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.clinical.statement.Fit;
import org.isopter.model.clinical.statement.Sources;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.value.Site;

/**
 * A row of the pupil truth table, on its side.
 *
 * @param cause the state
 * @param side the side; both for a state that has none
 */
public record PupilState(PupilCause cause, Site side) {

  private static final List<PupilState> ALL =
      Arrays.stream(PupilCause.values()).flatMap(PupilState::sides).toList();

  private static final Map<PupilCause, PupilCause.Row> ROWS = rows();

  private static Map<PupilCause, PupilCause.Row> rows() {
    Map<PupilCause, PupilCause.Row> rows = new EnumMap<>(PupilCause.class);
    for (PupilCause cause : PupilCause.values()) {
      rows.put(cause, cause.row());
    }
    return rows;
  }

  /** Returns every row on every side it may have. */
  public static List<PupilState> all() {
    return ALL;
  }

  /** Returns the rows that allow all the signs; a sign that was not examined rules nothing out. */
  public static Fit<PupilState> fitting(PupilSigns signs) {
    PupilSigns mirrored = signs.mirrored();
    List<PupilState> fitting =
        ALL.stream()
            .filter(state -> state.allows(state.side == Site.LEFT ? mirrored : signs))
            .toList();
    StatementBuilder topic =
        new StatementBuilder("pupils.table", Sources.PUPIL_WIRING, signs.facts());
    return Fit.of(fitting, (certainty, rows) -> topic.say(certainty, words(rows)));
  }

  /** Returns the row seen in a mirror. */
  public PupilState mirrored() {
    return new PupilState(cause, side.fellow());
  }

  private boolean allows(PupilSigns signs) {
    return Objects.requireNonNull(ROWS.get(cause)).allows(signs);
  }

  private static Stream<PupilState> sides(PupilCause cause) {
    List<Site> sides = cause.isSided() ? Site.EACH_EYE : Site.PAIR;
    return sides.stream().map(side -> new PupilState(cause, side));
  }

  private static String words(List<PupilState> rows) {
    return rows.isEmpty()
        ? "No single row of the table fits these signs; there may be more than one cause."
        : "What fits in the table: "
            + String.join("; ", rows.stream().map(PupilState::toString).toList())
            + ".";
  }

  /** Returns the row in words. */
  @Override
  public String toString() {
    return Optional.of(side)
        .filter(eye -> eye != Site.BOTH)
        .map(eye -> eye.word() + " " + cause.words())
        .orElse(cause.words());
  }
}
