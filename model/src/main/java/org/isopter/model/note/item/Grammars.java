package org.isopter.model.note.item;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.ItemReader;
import org.isopter.model.note.grammar.Wording;

/** The table of the items that are understood. */
public final class Grammars {

  public static final List<Grammar> ALL =
      Stream.of(
              AcuityNotes.GRAMMARS,
              PupilNotes.GRAMMARS,
              ColourNotes.GRAMMARS,
              FieldNotes.GRAMMARS,
              DiscNotes.GRAMMARS,
              LidNotes.GRAMMARS,
              PressureNotes.GRAMMARS,
              RefractionNotes.GRAMMARS,
              MovementNotes.GRAMMARS,
              AlignmentNotes.GRAMMARS,
              SegmentNotes.GRAMMARS,
              DropNotes.GRAMMARS,
              HalfFieldNotes.GRAMMARS)
          .flatMap(List::stream)
          .toList();

  /** An item without a heading: an acuity whose notation leaves no doubt. */
  public static final ItemReader.Start BARE =
      ItemReader.Start.of(AcuityNotes.EVIDENT, Heading.of("VA"));

  /** How each finding is written. */
  public static final List<Wording<?>> WORDINGS =
      Stream.of(
              AcuityNotes.WORDINGS,
              PupilNotes.WORDINGS,
              ColourNotes.WORDINGS,
              FieldNotes.WORDINGS,
              DiscNotes.WORDINGS,
              LidNotes.WORDINGS,
              PressureNotes.WORDINGS,
              RefractionNotes.WORDINGS,
              MovementNotes.WORDINGS,
              AlignmentNotes.WORDINGS,
              SegmentNotes.WORDINGS,
              DropNotes.WORDINGS)
          .<Wording<?>>flatMap(List::stream)
          .toList();

  private Grammars() {}
}
