package org.isopter.model.clinical.pupil;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Sources;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.value.Site;

/**
 * What the table of causes makes of the signs, taken together.
 *
 * <p>It never chooses among rows, and never names only rows that are not grave. A row to which one
 * sign alone is opposed is named with that sign, for any sign may have been misjudged.
 *
 * @param fitting the rows that every recorded sign allows, the grave ones first
 * @param butForOne the grave rows that every recorded sign but one allows, with that sign
 * @param missing the signs that were not recorded and that the fitting rows do not share
 * @param statement what is said
 */
public record PupilReading(
    List<PupilCause> fitting,
    Map<PupilCause, PupilSigns.Key> butForOne,
    List<PupilSign> missing,
    Statement statement) {

  private static final String OPEN =
      "These signs do not settle a cause. What was not recorded may be what tells.";
  private static final String MORE = " There may be more than one cause.";

  /** With so many rows that fit, or do but for one sign, that sign is left to the table. */
  private static final int MANY = 10;

  /** So many of those that fail by one sign are named then, the gravest of them. */
  private static final int NEAREST = 6;

  /** So many signs that would tell more are named. */
  private static final int NAMED = 8;

  /** What tells most, first; common practice, no source. */
  private static final List<PupilSign> TELLING =
      List.of(
          PupilSign.DIRECT,
          PupilSign.NEAR,
          PupilSign.UNEQUAL,
          PupilSign.AFFERENT,
          PupilSign.LID,
          PupilSign.MOVEMENT,
          PupilSign.DOUBLE,
          PupilSign.PRESSURE,
          PupilSign.FIELD,
          PupilSign.FRONT,
          PupilSign.CONSENSUAL,
          PupilSign.OUTLINE);

  /** Returns what the table makes of signs of which one at least departs from the usual. */
  public static PupilReading of(PupilSigns signs) {
    List<PupilCause> fitting = new ArrayList<>();
    Map<PupilCause, PupilSigns.Key> near = new LinkedHashMap<>();
    List<PupilSigns.Key> unusual = signs.maybeUnusual();
    for (PupilCause row : PupilCauses.all()) {
      if (row.explains(signs, unusual)) {
        List<PupilSigns.Key> against = row.against(signs);
        if (against.isEmpty()) {
          fitting.add(row);
        } else if (against.size() == 1) {
          near.put(row, against.get(0));
        }
      }
    }
    boolean alone = near.isEmpty();
    // A side of the defect is no slip that a row on the other side could make up for; a row that
    // knows no defect is named where hardly any other is, for two causes may stand together.
    boolean some = fitting.size() > 1;
    near.entrySet()
        .removeIf(
            one ->
                !one.getKey().grave()
                    || (one.getValue().sign() == PupilSign.AFFERENT
                        && (some || fitting.contains(one.getKey().mirrored()))));
    List<PupilSign> missing = missing(signs, fitting);
    return new PupilReading(
        List.copyOf(fitting), near, missing, statement(signs, fitting, near, missing, alone));
  }

  private static List<PupilSign> missing(PupilSigns signs, List<PupilCause> fitting) {
    Predicate<PupilSign> tells =
        sign ->
            keys(sign)
                .filter(key -> signs.seen(key).isEmpty())
                .anyMatch(
                    key -> fitting.stream().map(row -> row.allows(key)).distinct().count() > 1);
    return Stream.of(PupilSign.values()).filter(PupilSign::isNamedAsMissing).filter(tells).toList();
  }

  private static Stream<PupilSigns.Key> keys(PupilSign sign) {
    List<Site> sites = sign.isOfThePair() ? Site.PAIR : Site.EACH_EYE;
    return sites.stream().map(site -> new PupilSigns.Key(sign, site));
  }

  private static Statement statement(
      PupilSigns signs,
      List<PupilCause> fitting,
      Map<PupilCause, PupilSigns.Key> near,
      List<PupilSign> missing,
      boolean alone) {
    StatementBuilder topic =
        new StatementBuilder("pupils.table", Sources.PUPIL_WIRING, signs.facts());
    if (!fitting.isEmpty() && fitting.stream().noneMatch(PupilCause::grave)) {
      return topic.say(Certainty.CANNOT_TELL, OPEN);
    }
    List<String> names = names(fitting);
    boolean few = names.size() + names(near.keySet()).size() < MANY;
    String others = few ? near(signs, near) : shortly(near);
    String text = fits(names) + others + wouldTell(signs, missing) + MORE;
    return topic.say(certainty(fitting, alone), text);
  }

  private static Certainty certainty(List<PupilCause> fitting, boolean alone) {
    if (fitting.isEmpty()) {
      return Certainty.NONE_FITS;
    }
    return fitting.size() == 1 && alone ? Certainty.ONE_FITS : Certainty.SEVERAL_FIT;
  }

  private static String fits(List<String> names) {
    return names.isEmpty()
        ? "No single row of the table fits all of these signs."
        : "What fits in the table: " + String.join("; ", names) + ".";
  }

  /** Returns the rows in words; a row that fits on either side is named once. */
  private static List<String> names(Collection<PupilCause> rows) {
    return rows.stream().map(row -> name(row, rows)).distinct().toList();
  }

  private static String name(PupilCause row, Collection<PupilCause> rows) {
    boolean either =
        row.side() != Site.BOTH
            && rows.stream()
                .anyMatch(
                    other -> other.id().equals(row.id()) && other.side() == row.side().fellow());
    return either ? row.title() + ", of either side" : row.toString();
  }

  private static String shortly(Map<PupilCause, PupilSigns.Key> near) {
    List<String> names = names(near.keySet());
    List<String> gravest = names.subList(0, Math.min(names.size(), NEAREST));
    String others = names.size() > NEAREST ? "; and others." : ".";
    return names.isEmpty() ? "" : " All signs but one fit: " + String.join("; ", gravest) + others;
  }

  /** Rows that fail by the same sign stand together. */
  private static String near(PupilSigns signs, Map<PupilCause, PupilSigns.Key> near) {
    Map<String, Set<PupilCause>> bySign = new LinkedHashMap<>();
    near.forEach(
        (row, key) ->
            bySign.computeIfAbsent(signs.fact(key), any -> new LinkedHashSet<>()).add(row));
    StringBuilder text = new StringBuilder();
    bySign.forEach(
        (sign, rows) ->
            text.append(" All signs but one (")
                .append(sign)
                .append(") fit: ")
                .append(String.join("; ", names(rows)))
                .append('.'));
    return text.toString();
  }

  private static String wouldTell(PupilSigns signs, List<PupilSign> missing) {
    return missing.isEmpty()
        ? ""
        : " Not recorded, though it would tell more: "
            + String.join(", ", telling(missing).map(sign -> unseen(signs, sign)).toList())
            + (missing.size() > NAMED ? " and others." : ".");
  }

  private static Stream<PupilSign> telling(List<PupilSign> missing) {
    return Stream.concat(
            TELLING.stream().filter(missing::contains),
            missing.stream().filter(sign -> !TELLING.contains(sign)))
        .limit(NAMED);
  }

  /** Names the eye where the sign was recorded of the other alone. */
  private static String unseen(PupilSigns signs, PupilSign sign) {
    List<PupilSigns.Key> unseen = keys(sign).filter(key -> signs.seen(key).isEmpty()).toList();
    return unseen.size() == 1 ? unseen.get(0).toString() : sign.title();
  }
}
