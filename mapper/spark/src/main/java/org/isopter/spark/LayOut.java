package org.isopter.spark;

import static java.util.Objects.requireNonNull;

import java.util.Iterator;
import java.util.Map;
import java.util.Spliterator;
import java.util.Spliterators;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.apache.hadoop.io.LongWritable;
import org.apache.hadoop.io.Text;
import org.apache.hadoop.mapreduce.InputSplit;
import org.apache.spark.api.java.function.Function2;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.RowMaker;
import scala.Tuple2;

/**
 * Makes rows of the lines of one piece, on the machine that reads it. A piece that is read again
 * gives the same rows.
 */
final class LayOut
    implements Function2<InputSplit, Iterator<Tuple2<LongWritable, Text>>, Iterator<LaidOut>> {

  private static final long serialVersionUID = 1;

  private final Map<Piece, Piece.Place> places;
  private final Identities identities;

  LayOut(Map<Piece, Piece.Place> places, Identities identities) {
    this.places = Map.copyOf(places);
    this.identities = identities;
  }

  @Override
  public Iterator<LaidOut> call(InputSplit split, Iterator<Tuple2<LongWritable, Text>> lines) {
    Piece.Place place = requireNonNull(places.get(Piece.of(split)), "a piece that was not there");
    RowMaker rows = identities.rows();
    Numbered numbered = new Numbered(place);
    return stream(lines)
        .map(line -> numbered.next(line._2()))
        .filter(document -> !isBlank(document.bytes()))
        .map(document -> LaidOut.of(rows.of(document)))
        .iterator();
  }

  private static <T> Stream<T> stream(Iterator<T> all) {
    return StreamSupport.stream(
        Spliterators.spliteratorUnknownSize(all, Spliterator.ORDERED), false);
  }

  private static boolean isBlank(byte[] bytes) {
    for (byte each : bytes) {
      if (each > ' ' || each < 0) {
        return false;
      }
    }
    return true;
  }

  /** Counts the lines of a piece, blank ones included. */
  private static final class Numbered {

    private final String source;
    private long line;

    Numbered(Piece.Place place) {
      this.source = place.source();
      this.line = place.before();
    }

    PoolDocument next(Text text) {
      return new PoolDocument(source, ++line, source, PoolDocument.Form.JSON, text.copyBytes());
    }
  }
}
