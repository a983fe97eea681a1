package org.isopter.model.drawing;

import java.util.List;
import org.isopter.model.exam.Exam;

/** The pictures of an examination, in the order of a letter. */
public final class Drawing {

  private Drawing() {}

  /** Returns pupils, fields, discs and movements as they are usually seen. */
  public static List<Picture> of(Exam exam) {
    return of(exam, SeenBy.USUAL);
  }

  /** Returns pupils, fields, discs and movements as they are seen from one side. */
  public static List<Picture> of(Exam exam, SeenBy view) {
    return List.of(
        PupilPicture.of(exam, view),
        FieldPicture.of(exam, view),
        DiscPicture.of(exam),
        MovementPicture.of(exam, view));
  }
}
