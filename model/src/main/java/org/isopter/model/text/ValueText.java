package org.isopter.model.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.ColourTest;
import org.isopter.model.catalogue.AcuityBound;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Corneas;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.value.Quantity;

/** The values that need words of their own; of all others the parts are said in their order. */
final class ValueText {

  private ValueText() {}

  static Optional<String> of(Object value) {
    if (value instanceof AcuityReading reading) {
      return Optional.of(ReadingText.of(reading));
    }
    if (value instanceof AcuityBound bound) {
      return Optional.of(ReadingText.of(bound));
    }
    if (value instanceof Fields.Confrontation field) {
      return Optional.of(FieldText.of(field));
    }
    if (value instanceof Movements.Ductions moves) {
      return Optional.of(MovementText.of(moves));
    }
    if (value instanceof Refractions.Refraction lens) {
      return Optional.of(refraction(lens));
    }
    if (value instanceof Corneas.Curvature cornea) {
      return Optional.of(curvature(cornea));
    }
    if (value instanceof Colours.Plates plates) {
      return Optional.of(plates(plates));
    }
    return SignText.of(value);
  }

  private static String plates(Colours.Plates plates) {
    String test =
        plates.test() == ColourTest.OTHER_PLATES ? "plates of another set" : plates.test().word();
    String name = test.endsWith("set") ? test : PlainWords.words(test) + " plates";
    return plates.correct()
        + " of "
        + plates.shown()
        + " "
        + name
        + plates.edition().map(count -> ", " + count + "-plate edition").orElse("")
        + plates.control().map(ValueText::control).orElse("");
  }

  private static String control(boolean read) {
    return read ? ", the control plate read" : ", the control plate not read";
  }

  private static String curvature(Corneas.Curvature cornea) {
    return power(cornea.flat())
        + " D flat, "
        + power(cornea.steep())
        + " D steep"
        + cornea.steepAxis().map(axis -> " at " + PlainWords.quantity(axis)).orElse("");
  }

  private static String refraction(Refractions.Refraction lens) {
    List<String> words = new ArrayList<>();
    String cylinder =
        lens.cylinder()
            .map(c -> " / " + power(c.power()) + " x " + c.axis().value().toPlainString())
            .orElse(" sphere");
    words.add(power(lens.sphere()) + cylinder);
    lens.addition().ifPresent(add -> words.add("reading addition " + power(add)));
    Stream.of(
            lens.horizontal().map(p -> prism(p.amount(), p.base().word())),
            lens.vertical().map(p -> prism(p.amount(), p.base().word())))
        .flatMap(Optional::stream)
        .forEach(words::add);
    lens.vertex().ifPresent(far -> words.add("lens at " + PlainWords.quantity(far)));
    lens.cycloplegic()
        .ifPresent(drops -> words.add(drops ? "under cycloplegia" : "without cycloplegia"));
    return join(words);
  }

  private static String prism(Quantity amount, String base) {
    return PlainWords.quantity(amount) + " base " + base;
  }

  private static String power(Quantity power) {
    String digits = power.value().toPlainString();
    return power.value().signum() < 0 ? digits : "+" + digits;
  }

  private static String join(List<String> words) {
    return String.join(", ", words.stream().filter(some -> !some.isBlank()).toList());
  }
}
