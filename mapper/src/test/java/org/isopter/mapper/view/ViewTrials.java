package org.isopter.mapper.view;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tools.jackson.databind.json.JsonMapper;

/**
 * What a view is tried with, put down for engines that are not written in Java: with {@code
 * -Dviews.folder} a file for each view, which holds it, the observations, and the rows that are
 * wanted.
 */
public final class ViewTrials {

  private static final Optional<Path> FOLDER =
      Optional.ofNullable(System.getProperty("views.folder")).map(Path::of);
  private static final JsonMapper JSON = JsonMapper.shared();

  private ViewTrials() {}

  /**
   * Puts a trial down, where a folder is named.
   *
   * @param id the name of the view
   * @param view the view as JSON
   * @param observations the observations as JSON, each by itself
   * @param wanted the cells of each row that are filled, without the key that is the engine's
   */
  public static void put(
      String id, String view, List<String> observations, List<Map<String, String>> wanted) {
    FOLDER.ifPresent(
        folder -> {
          String text =
              observations.stream()
                  .collect(
                      Collectors.joining(
                          ",\n",
                          "{\"view\":" + view + ",\n\"observations\":[",
                          "],\n\"rows\":" + JSON.writeValueAsString(wanted) + "}\n"));
          try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve(id + ".json"), text);
          } catch (IOException failed) {
            throw new UncheckedIOException(failed);
          }
        });
  }
}
