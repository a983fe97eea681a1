package org.isopter.model.drawing;

import java.util.List;
import org.isopter.model.exam.Exam;

/** The pictures of an examination, in the order of a letter. */
public final class Drawing {

  private Drawing() {}

  /** Returns pupils, fields and discs. */
  public static List<Picture> of(Exam exam) {
    return List.of(PupilPicture.of(exam), FieldPicture.of(exam), DiscPicture.of(exam));
  }
}
