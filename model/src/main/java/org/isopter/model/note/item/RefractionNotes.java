package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.HorizontalBase;
import org.isopter.model.answer.movement.VerticalBase;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.answer.sight.RefractionMethod;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Unit;

/** Refraction. */
final class RefractionNotes {

  private record Lens(Quantity sphere, Optional<Refractions.Cylinder> cylinder) {}

  private static final PhraseTable<HorizontalBase> ACROSS =
      PhraseTable.<HorizontalBase>empty()
          .say(HorizontalBase.IN, "base in", "BI")
          .say(HorizontalBase.OUT, "base out", "BO");

  private static final PhraseTable<VerticalBase> UPRIGHT =
      PhraseTable.<VerticalBase>empty()
          .say(VerticalBase.UP, "base up", "BU")
          .say(VerticalBase.DOWN, "base down", "BD");

  private static final Slot<Lens> LENS =
      Slot.value(
          "sphere and cylinder",
          ((Matcher<Lens>) RefractionNotes::lens).or(RefractionNotes::beforeAcuity));

  /** Behind a heading a sphere needs no unit: it is written in quarters of a dioptre. */
  private static final Slot<Lens> NAMED_LENS =
      Slot.value(
          "sphere and cylinder", ((Matcher<Lens>) RefractionNotes::lens).or(RefractionNotes::bare));

  private static final Slot<Quantity> ADDITION =
      Slot.valueOfEach(
          "addition",
          cursor ->
              cursor.take("add")
                  ? cursor.anyNumber().map(RefractionNotes::dioptres)
                  : Optional.empty());

  /** The lenses of the glasses that are worn; an acuity behind others is one in trial lenses. */
  private static final Slot<Boolean> WORN =
      Slot.condition("glasses", PhraseTable.<Boolean>empty().say(true, "glasses"));

  private static final Slot<AcuityWords.Seen> SEEN = Slot.value("acuity", RefractionNotes::seen);

  private static final Slot<AcuityWords.Seen> PRINT =
      Slot.valueOrShared("near acuity", AcuityWords.PRINT);

  private static final Slot<Refractions.Prism<HorizontalBase>> HORIZONTAL =
      Slot.value("horizontal prism", prism(ACROSS));

  private static final Slot<Refractions.Prism<VerticalBase>> VERTICAL =
      Slot.value("vertical prism", prism(UPRIGHT));

  private static final Slot<Quantity> VERTEX =
      Slot.condition(
          "vertex distance",
          cursor ->
              cursor.takeAny("vertex", "bvd") ? Common.MILLIMETRES.read(cursor) : Optional.empty());

  private static final Slot<Boolean> CYCLOPLEGIC =
      Slot.condition(
          "cycloplegia",
          PhraseTable.<Boolean>empty()
              .say(true, "cycloplegic", "under cycloplegia", "with cycloplegia")
              .say(
                  false,
                  "non-cycloplegic",
                  "not cycloplegic",
                  "without cycloplegia",
                  "no cycloplegia"));

  private static final PhraseTable<RefractionMethod> METHODS =
      PhraseTable.of(RefractionMethod.class)
          .say(RefractionMethod.SUBJECTIVE, "subjective refraction")
          .say(RefractionMethod.OBJECTIVE, "objective refraction")
          .say(RefractionMethod.AUTOREFRACTION, "autoref")
          .say(RefractionMethod.RETINOSCOPY, "ret");

  private static final Slot<RefractionMethod> METHOD = Slot.condition("technique", METHODS);

  private static final String EXAMPLE = "refraction R -2.00/-1.50x30 add +2.00 L -2.00 DS";

  /** A refraction without a heading. */
  static final Grammar BARE =
      Grammar.of("refraction without a heading", EXAMPLE)
          .slots(LENS, ADDITION, HORIZONTAL, VERTICAL, VERTEX, CYCLOPLEGIC, SEEN, PRINT, WORN)
          .method(METHOD)
          .whole(Refractions.REFRACTION)
          .build(eye -> refracted(eye, LENS));

  private static final Grammar GRAMMAR =
      Grammar.of("refraction", EXAMPLE)
          .startsWith("refraction")
          .startsWith(
              Stream.of("retinoscopy", "autorefraction", "autoref", "subjective refraction")
                  .map(Heading::of)
                  .map(Heading::keptAsWord))
          .slots(NAMED_LENS, ADDITION, HORIZONTAL, VERTICAL, VERTEX)
          .slots(CYCLOPLEGIC, SEEN, PRINT, WORN)
          .method(METHOD)
          .whole(Refractions.REFRACTION)
          .build(eye -> refracted(eye, NAMED_LENS));

  static final List<Grammar> GRAMMARS = List.of(GRAMMAR);

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Refractions.REFRACTION, "refraction", RefractionNotes::words)
              .under(RefractionNotes::conditions));

  private RefractionNotes() {}

  /** Reads a sphere with a cylinder, a sphere that says so, or plano. */
  private static Optional<Lens> lens(Cursor cursor) {
    boolean named = cursor.takeAny("sph", "ds", "s");
    boolean plano = cursor.takeAny("plano", "pl");
    Optional<BigDecimal> sphere = plano ? Optional.of(BigDecimal.ZERO) : cursor.signed();
    boolean unit = cursor.takeAny("ds", "sph", "d");
    Optional<Refractions.Cylinder> cylinder = cursor.attempt(RefractionNotes::cylinder);
    boolean whole = cylinder.isPresent() || unit || plano || (named && !cursor.sees("/"));
    return sphere.filter(any -> whole).map(power -> new Lens(dioptres(power), cylinder));
  }

  /** Reads a sphere alone, with its sign and two decimals, and nothing of a cylinder behind it. */
  private static Optional<Lens> bare(Cursor cursor) {
    Optional<BigDecimal> sphere = cursor.signed();
    boolean more = Stream.of("/", "x", "*", "(", "-", "+", "cyl", "dc", "@").anyMatch(cursor::sees);
    return sphere
        .filter(power -> !more && power.scale() == 2)
        .filter(power -> power.remainder(new BigDecimal("0.25")).signum() == 0)
        .map(power -> new Lens(dioptres(power), Optional.empty()));
  }

  /** Reads a sphere alone of which an acuity behind it says that it is a lens: -1.00 VA 20/20. */
  private static Optional<Lens> beforeAcuity(Cursor cursor) {
    Optional<Lens> lens = bare(cursor);
    int behind = cursor.place();
    boolean acuity = cursor.attempt(RefractionNotes::seen).isPresent();
    cursor.back(behind);
    return lens.filter(any -> acuity);
  }

  /** Says whether an item starts with a side, and a power with its sign or plano behind it. */
  static boolean isLens(List<Token> item) {
    Cursor cursor = new Cursor(item, 0);
    boolean side = cursor.attempt(Common.SIDES).isPresent();
    cursor.takeAny(":", "=");
    cursor.takeAny("sph", "s");
    boolean power = cursor.sees("plano") || cursor.signed().isPresent();
    return side && power;
  }

  /** Reads a cylinder and its axis: /-0.75x90, (-0.75 at 90°), cyl -0.75 A 90°, -0.50/85°. */
  private static Optional<Refractions.Cylinder> cylinder(Cursor cursor) {
    boolean bracket = !cursor.takeAny("/", ",") && cursor.take("(");
    cursor.takeAny("cyl", "dc");
    Optional<BigDecimal> power = cursor.signed();
    cursor.takeAny("dc", "d", "cyl");
    boolean closed = bracket && cursor.take(")");
    boolean mark = cursor.takeAny("x", "axis", "ax", "a", "at", "@", "*");
    if (!mark) {
      cursor.take("/");
    }
    boolean axis = cursor.takeAny("axis", "ax", "a") || mark;
    Optional<String> degrees =
        cursor
            .digits()
            .filter(text -> text.matches("0\\d\\d|[^0].*|0"))
            .filter(text -> text.matches("\\d{1,3}"));
    boolean unit = cursor.takeAny("\u00b0", "deg", "degrees");
    cursor.take(bracket && !closed ? ")" : "\u00b0");
    return degrees
        .filter(any -> axis || closed || unit)
        .flatMap(
            text ->
                power.map(
                    found ->
                        new Refractions.Cylinder(dioptres(found), Quantity.of(text, Unit.DEGREE))));
  }

  /** Reads the acuity through the lens, behind it: 6/5, (20/20), VA 6/6. */
  private static Optional<AcuityWords.Seen> seen(Cursor cursor) {
    boolean named = cursor.takeAny("va", "=");
    boolean tenths = named && cursor.take("tenths");
    if (tenths) {
      return cursor.number().map(RefractionNotes::decimal);
    }
    Optional<AcuityWords.Seen> parts = cursor.attempt(RefractionNotes::inTenths);
    return parts.isPresent() ? parts : AcuityWords.EVIDENT.read(cursor);
  }

  /** Reads 8/10, which behind a lens is no count of plates: the tenths of a decimal acuity. */
  private static Optional<AcuityWords.Seen> inTenths(Cursor cursor) {
    Optional<String> tenths = cursor.digits().filter(text -> text.matches("[1-9]|1[0-6]"));
    return tenths
        .filter(any -> cursor.take("/") && cursor.take("10"))
        .map(text -> decimal(new BigDecimal(text).movePointLeft(1)));
  }

  private static AcuityWords.Seen decimal(BigDecimal number) {
    return AcuityWords.Seen.whole(number.toPlainString() + " decimal");
  }

  private static <B> Matcher<Refractions.Prism<B>> prism(PhraseTable<B> bases) {
    return cursor -> {
      Optional<BigDecimal> amount = cursor.number();
      cursor.takeAny("pd", "\u0394", "\u2206", "\u03b4");
      return amount.flatMap(
          number ->
              bases
                  .read(cursor)
                  .map(
                      base ->
                          new Refractions.Prism<>(new Quantity(number, Unit.PRISM_DIOPTRE), base)));
    };
  }

  /** Adds the refraction, and the acuities that were reached with it. */
  private static void refracted(Eye eye, Slot<Lens> lens) throws NotRead {
    boolean worn = eye.has(WORN);
    boolean tried = eye.find(METHOD).map(RefractionMethod.SUBJECTIVE::equals).orElse(!worn);
    eye.found(Refractions.REFRACTION, refraction(eye, eye.get(lens)));
    Optional<Correction> correction =
        worn
            ? Optional.of(Correction.SPECTACLES)
            : Optional.of(Correction.TRIAL_LENSES).filter(any -> tried);
    acuity(eye, Acuities.DISTANCE, eye.find(SEEN), correction);
    acuity(eye, Acuities.NEAR, eye.find(PRINT), correction);
  }

  private static void acuity(
      Eye eye,
      Finding<AcuityReading> finding,
      Optional<AcuityWords.Seen> seen,
      Optional<Correction> correction)
      throws NotRead {
    if (seen.isPresent()) {
      Result<Acuity> acuity = AcuityText.parse(seen.get().text());
      if (!acuity.isOk()) {
        throw NotRead.because(Eye.sentence(acuity.faults().get(0)));
      }
      eye.found(
          finding,
          new AcuityReading(
              acuity.orThrow(), correction, Optional.empty(), Optional.empty(), Optional.empty()));
      eye.remark(seen.get().remark());
      eye.remark("with the refraction");
    }
  }

  private static Refractions.Refraction refraction(Eye eye, Lens lens) {
    return new Refractions.Refraction(
        lens.sphere(),
        lens.cylinder(),
        eye.find(ADDITION),
        eye.find(HORIZONTAL),
        eye.find(VERTICAL),
        eye.find(VERTEX),
        eye.find(CYCLOPLEGIC));
  }

  private static String conditions(Refractions.Refraction refraction) {
    return WrittenWords.join(
        WrittenWords.maybeQuantity("vertex", refraction.vertex()),
        WrittenWords.maybe(
            refraction.cycloplegic(), yes -> yes ? "cycloplegic" : "without cycloplegia"));
  }

  private static String words(Refractions.Refraction refraction) {
    return WrittenWords.join(
        WrittenWords.signed(refraction.sphere().value()) + cylinder(refraction),
        WrittenWords.maybe(
            refraction.addition(), power -> "add " + WrittenWords.signed(power.value())),
        WrittenWords.maybe(
            refraction.horizontal(), prism -> prism.amount() + " " + ACROSS.phrase(prism.base())),
        WrittenWords.maybe(
            refraction.vertical(), prism -> prism.amount() + " " + UPRIGHT.phrase(prism.base())));
  }

  private static String cylinder(Refractions.Refraction refraction) {
    return refraction
        .cylinder()
        .map(
            c ->
                "/"
                    + WrittenWords.signed(c.power().value())
                    + "x"
                    + c.axis().value().toPlainString())
        .orElse(" DS");
  }

  private static Quantity dioptres(BigDecimal power) {
    return new Quantity(power, Unit.DIOPTRE);
  }
}
