package org.isopter.profiles.compiled;

import java.util.function.Predicate;
import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;
import org.isopter.model.wire.Fixed;
import org.isopter.model.wire.ValueForm;

/** Compiles fixed values: whether an item holds them, and what is wrong where it does not. */
final class Patterns implements Fixed.Cases<Patterns.Pattern> {

  private static final Patterns CASES = new Patterns();
  private static final Name CODE = Name.of("code");
  private static final Name SYSTEM = Name.of("system");
  private static final Name CODING = Name.of("coding");

  private Patterns() {}

  /**
   * A fixed value.
   *
   * @param fits whether an item holds it
   * @param check reports what is missing or different
   * @param words what is wanted, in words
   */
  record Pattern(Predicate<Item> fits, Check check, String words) {}

  static Pattern of(Fixed fixed) {
    return fixed.fold(CASES);
  }

  @Override
  public Pattern coding(Fixed.OfCoding fixed) {
    Code code = fixed.code();
    Check check = both(text("system", code.system()), text("code", code.code()));
    return new Pattern(item -> isCoding(item, code), check, code.token());
  }

  @Override
  public Pattern concept(Fixed.OfConcept fixed) {
    Code code = fixed.code();
    Predicate<Item> coding = item -> isCoding(item, code);
    Predicate<Item> fits = item -> item.any(CODING, coding);
    Check check =
        (item, report) -> {
          if (!fits.test(item)) {
            report.wrong(item, "saw " + SeenWords.of(item) + ", wanted " + code.token());
          }
        };
    return new Pattern(fits, check, code.token());
  }

  @Override
  public Pattern quantity(Fixed.OfQuantity fixed) {
    Unit unit = fixed.unit();
    return new Pattern(item -> isIn(item, unit), unit(unit), unit.label());
  }

  @Override
  public Pattern ratio(Fixed.OfRatio fixed) {
    Unit unit = fixed.unit();
    Check check = both(below("numerator", unit(unit)), below("denominator", unit(unit)));
    Predicate<Item> fits =
        item ->
            item.members("numerator").stream().anyMatch(each -> isIn(each, unit))
                && item.members("denominator").stream().anyMatch(each -> isIn(each, unit));
    return new Pattern(fits, check, unit.label());
  }

  private static boolean isCoding(Item item, Code code) {
    return item.text(CODE).equals(code.code()) && item.text(SYSTEM).equals(code.system());
  }

  private static boolean isIn(Item item, Unit unit) {
    return isCoding(item, ValueForm.ucum(unit));
  }

  private static Check unit(Unit unit) {
    Code ucum = ValueForm.ucum(unit);
    return both(text("system", ucum.system()), text("code", ucum.code()));
  }

  private static Check below(String name, Check check) {
    return (item, report) -> item.members(name).forEach(each -> check.check(each, report));
  }

  private static Check text(String name, String wanted) {
    return (item, report) -> {
      if (item.members(name).isEmpty()) {
        report.lacks(item, name, "saw nothing, wanted " + wanted);
      }
      for (Item each : item.members(name)) {
        if (!each.text().equals(wanted)) {
          report.wrong(each, "saw " + each.text() + ", wanted " + wanted);
        }
      }
    };
  }

  private static Check both(Check first, Check second) {
    return (item, report) -> {
      first.check(item, report);
      second.check(item, report);
    };
  }
}
