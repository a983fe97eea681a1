package org.isopter.mapper.foreign.run;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.io.Sha256;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Result;

/**
 * What an export says was deleted: the bundles in {@code FILE.deleted} beside {@code FILE}, each
 * with entries whose request is to delete (HL7 FHIR Bulk Data Access 2.0.0, {@code deleted}).
 */
public final class Deletions {

  private static final Pattern RESOURCE =
      Pattern.compile("(?:.*/)?([A-Z][A-Za-z]+/[A-Za-z0-9.-]{1,64})");

  private final Set<String> names;

  private Deletions(Set<String> names) {
    this.names = names;
  }

  /**
   * Returns what was deleted of a file; nothing where no file says so.
   *
   * @throws IOException when that file cannot be read, or says something else than what to delete:
   *     to read on would bring back what was deleted
   */
  public static Deletions beside(String file) throws IOException {
    Set<String> names = new TreeSet<>();
    Optional<Path> list = list(file);
    if (list.isPresent()) {
      int number = 0;
      for (String line : Files.readAllLines(list.get())) {
        number++;
        if (!line.isBlank() && !add(line, names)) {
          throw new IOException(
              list.get() + ":" + number + ": wanted a bundle of resources to delete by id");
        }
      }
    }
    return new Deletions(names);
  }

  private static Optional<Path> list(String file) {
    try {
      return Optional.of(Path.of(file + ".deleted")).filter(Files::isRegularFile);
    } catch (InvalidPathException stream) {
      return Optional.empty();
    }
  }

  private static boolean add(String line, Set<String> names) {
    if (!(RawJson.OWN.read(line) instanceof Result.Ok<Raw> bundle)
        || !Neighbours.type(bundle.value()).equals("Bundle")) {
      return false;
    }
    for (Raw.Obj entry : bundle.value().objects("entry")) {
      Raw.Obj request = entry.object("request").orElse(Raw.Obj.EMPTY);
      Matcher name = RESOURCE.matcher(request.string("url").orElse(""));
      if (!request.string("method").equals(Optional.of("DELETE")) || !name.matches()) {
        return false;
      }
      names.add(name.group(1));
    }
    return true;
  }

  /** Returns true if nothing was deleted. */
  public boolean areNone() {
    return names.isEmpty();
  }

  /**
   * Returns a document in JSON without what was deleted; empty where all of it was. What is no JSON
   * is returned as it is.
   *
   * @param deleted hears of each resource that is left out, by its type and id
   */
  public Optional<byte[]> left(byte[] json, Consumer<String> deleted) {
    return names.isEmpty() || !(new RawJson(Limits.USUAL).read(json) instanceof Result.Ok<Raw> read)
        ? Optional.of(json)
        : without(read.value(), deleted)
            .map(left -> left == read.value() ? json : RawJson.write(left).getBytes(UTF_8));
  }

  /** Returns a digest of what is deleted; empty where nothing is. */
  String digest() {
    return names.isEmpty() ? "" : Sha256.hex(names.toString());
  }

  /**
   * Returns a document without what was deleted; empty where all of it was.
   *
   * @param deleted hears of each resource that is left out
   */
  Optional<Raw> without(Raw document, Consumer<String> deleted) {
    if (names.isEmpty()) {
      return Optional.of(document);
    }
    if (isDeleted(document, deleted)) {
      return Optional.empty();
    }
    if (!(document instanceof Raw.Obj bundle) || !Neighbours.type(bundle).equals("Bundle")) {
      return Optional.of(document);
    }
    List<Raw> left = new ArrayList<>();
    for (Raw entry : bundle.list("entry")) {
      if (entry.object("resource").filter(one -> isDeleted(one, deleted)).isEmpty()) {
        left.add(entry);
      }
    }
    return Optional.of(
        left.size() == bundle.list("entry").size() ? bundle : bundle.with("entry", Raw.of(left)));
  }

  private boolean isDeleted(Raw resource, Consumer<String> deleted) {
    String name = Neighbours.type(resource) + "/" + resource.string("id").orElse("");
    boolean gone = names.contains(name);
    if (gone) {
      deleted.accept(name);
    }
    return gone;
  }
}
