package org.isopter.spark;

import java.io.Serializable;
import org.apache.hadoop.mapreduce.InputSplit;
import org.apache.hadoop.mapreduce.lib.input.FileSplit;

/**
 * The piece of a file that one task reads.
 *
 * @param file the file
 * @param start its first byte
 */
record Piece(String file, long start) implements Serializable {

  static Piece of(InputSplit split) {
    FileSplit piece = (FileSplit) split;
    return new Piece(piece.getPath().toString(), piece.getStart());
  }

  /**
   * Where the lines of a piece stand.
   *
   * @param source what the tables call the file
   * @param before how many lines of the file come before
   */
  record Place(String source, long before) implements Serializable {}

  /**
   * How many lines there are.
   *
   * @param piece the piece
   * @param lines its lines, blank ones included
   */
  record Size(Piece piece, long lines) implements Serializable {}
}
