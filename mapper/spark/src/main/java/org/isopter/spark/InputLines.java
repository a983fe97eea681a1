package org.isopter.spark;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.io.LongWritable;
import org.apache.hadoop.io.Text;
import org.apache.hadoop.mapreduce.InputSplit;
import org.apache.hadoop.mapreduce.Job;
import org.apache.spark.api.java.JavaNewHadoopRDD;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import scala.Tuple2;

/** The lines of files, read in pieces by many machines, each line with its number in its file. */
final class InputLines {

  private final JavaNewHadoopRDD<LongWritable, Text> lines;
  private final List<Piece> pieces;

  private InputLines(JavaNewHadoopRDD<LongWritable, Text> lines, List<Piece> pieces) {
    this.lines = lines;
    this.pieces = pieces;
  }

  static InputLines of(JavaSparkContext spark, List<Path> files) throws IOException {
    Job job = Job.getInstance(spark.hadoopConfiguration());
    NamedFiles.set(job.getConfiguration(), files);
    List<Piece> pieces = new ArrayList<>();
    for (InputSplit split : new NamedFiles().getSplits(job)) {
      pieces.add(Piece.of(split));
    }
    return new InputLines(
        (JavaNewHadoopRDD<LongWritable, Text>)
            spark.newAPIHadoopRDD(
                job.getConfiguration(), NamedFiles.class, LongWritable.class, Text.class),
        pieces);
  }

  /**
   * Returns what documents become.
   *
   * @param sources what the tables call each file
   */
  JavaRDD<LaidOut> layOut(Map<String, String> sources, Identities identities) {
    return lines.mapPartitionsWithInputSplit(new LayOut(places(sources), identities), true);
  }

  /** A file in several pieces is counted first: only then is it known which line a piece starts. */
  private Map<Piece, Piece.Place> places(Map<String, String> sources) {
    Map<Piece, Long> sizes = sizes();
    Map<Piece, Piece.Place> places = new HashMap<>();
    Map<String, Long> before = new HashMap<>();
    for (Piece piece : sorted()) {
      long first = before.getOrDefault(piece.file(), 0L);
      String source = sources.getOrDefault(piece.file(), piece.file());
      places.put(piece, new Piece.Place(source, first));
      before.put(piece.file(), first + sizes.getOrDefault(piece, 0L));
    }
    return places;
  }

  private Map<Piece, Long> sizes() {
    Set<String> once = new HashSet<>();
    Set<String> several = new HashSet<>();
    pieces.stream().map(Piece::file).filter(file -> !once.add(file)).forEach(several::add);
    Map<Piece, Long> sizes = new HashMap<>();
    if (!several.isEmpty()) {
      lines
          .mapPartitionsWithInputSplit((split, each) -> size(several, split, each), true)
          .collect()
          .forEach(size -> sizes.put(size.piece(), size.lines()));
    }
    return sizes;
  }

  private static Iterator<Piece.Size> size(
      Set<String> several, InputSplit split, Iterator<Tuple2<LongWritable, Text>> each) {
    Piece piece = Piece.of(split);
    List<Piece.Size> sizes = new ArrayList<>();
    if (several.contains(piece.file())) {
      long count = 0;
      while (each.hasNext()) {
        each.next();
        count++;
      }
      sizes.add(new Piece.Size(piece, count));
    }
    return sizes.iterator();
  }

  private List<Piece> sorted() {
    return pieces.stream()
        .sorted(Comparator.comparing(Piece::file).thenComparingLong(Piece::start))
        .toList();
  }
}
