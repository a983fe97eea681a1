package org.isopter.spark;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.LocatedFileStatus;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.fs.RemoteIterator;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/** Finds the files that arguments name: files, folders, and patterns of either. */
final class InputFiles {

  /** Endings by which files are known within a folder. */
  private static final List<String> ENDINGS = List.of(".ndjson", ".ndjson.gz");

  private InputFiles() {}

  /**
   * Returns the files in the order of their names, each once. A file that is named is taken
   * whatever it is called; of a folder, those whose names say that they are NDJSON.
   *
   * @throws FaultException when an argument names no file
   */
  static List<Path> find(List<String> arguments, Configuration hadoop) throws IOException {
    TreeSet<String> found = new TreeSet<>();
    for (String argument : arguments) {
      List<String> more = find(argument, hadoop);
      if (more.isEmpty()) {
        throw new FaultException(
            new Fault(
                argument,
                "no file",
                "a file, a folder with files, or a pattern of either",
                "files in folders are read when they end in " + String.join(" or ", ENDINGS)));
      }
      found.addAll(more);
    }
    return found.stream().map(Path::new).toList();
  }

  private static List<String> find(String argument, Configuration hadoop) throws IOException {
    Path pattern = new Path(argument);
    FileSystem files = pattern.getFileSystem(hadoop);
    List<String> found = new ArrayList<>();
    FileStatus[] matches = files.globStatus(pattern);
    for (FileStatus match : matches == null ? new FileStatus[0] : matches) {
      if (match.isDirectory()) {
        addAll(files, match.getPath(), found);
      } else {
        found.add(match.getPath().toString());
      }
    }
    return found;
  }

  private static void addAll(FileSystem files, Path folder, List<String> found) throws IOException {
    RemoteIterator<LocatedFileStatus> inside = files.listFiles(folder, true);
    while (inside.hasNext()) {
      Path file = inside.next().getPath();
      String name = file.getName().toLowerCase(Locale.ROOT);
      if (ENDINGS.stream().anyMatch(name::endsWith)) {
        found.add(file.toString());
      }
    }
  }
}
