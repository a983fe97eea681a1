package org.isopter.model.clinical.field;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Fields.Confrontation;

/**
 * The fields of both eyes by confrontation, with what is known beside them.
 *
 * @param right the right eye's field
 * @param left the left eye's field
 * @param sector whether the examiner says that the loss is a sector, which quadrants cannot show
 * @param details what is known beside the quadrants
 */
public record FieldSigns(EyeField right, EyeField left, boolean sector, FieldDetails details) {

  /** Returns the signs of two fields and nothing beside. */
  public static FieldSigns of(EyeField right, EyeField left) {
    return new FieldSigns(right, left, false, FieldDetails.none());
  }

  /** Returns the signs of two confrontation tests, or nothing when a quadrant was not tested. */
  public static Optional<FieldSigns> of(Confrontation right, Confrontation left) {
    return EyeField.of(right).flatMap(one -> EyeField.of(left).map(two -> FieldSigns.of(one, two)));
  }

  /** Returns these signs with other details. */
  public FieldSigns with(FieldDetails known) {
    return new FieldSigns(right, left, sector, known);
  }

  /** Returns these signs with the loss called a sector. */
  public FieldSigns asSector() {
    return new FieldSigns(right, left, true, details);
  }

  /** Returns the signs seen in a mirror: right and left changed over. */
  public FieldSigns mirrored() {
    return new FieldSigns(/* right= */ left, /* left= */ right, sector, details.mirrored());
  }

  List<String> facts() {
    Stream<String> shape = sector ? Stream.of("the loss is a sector") : Stream.of();
    return Stream.of(
            Stream.of(right.facts("right"), left.facts("left")), shape, details.facts().stream())
        .flatMap(all -> all)
        .toList();
  }
}
