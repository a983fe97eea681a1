package org.isopter.spark;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.mapreduce.JobContext;
import org.apache.hadoop.mapreduce.lib.input.TextInputFormat;

/**
 * Lines of exactly the files that are named. Hadoop's own way passes over a file whose name begins
 * with a dot or a line, and takes brackets in a name for a pattern.
 */
public final class NamedFiles extends TextInputFormat {

  private static final String FILES = "isopter.pool.files";

  static void set(Configuration hadoop, List<Path> files) {
    hadoop.set(FILES, String.join("\n", files.stream().map(Path::toString).toList()));
    // A line ends where it does on one machine; to JSON, a carriage return is white space.
    hadoop.set("textinputformat.record.delimiter", "\n");
  }

  @Override
  protected List<FileStatus> listStatus(JobContext job) throws IOException {
    Configuration hadoop = job.getConfiguration();
    List<FileStatus> found = new ArrayList<>();
    for (String name : hadoop.get(FILES, "").lines().toList()) {
      Path file = new Path(name);
      found.add(file.getFileSystem(hadoop).getFileStatus(file));
    }
    return found;
  }
}
