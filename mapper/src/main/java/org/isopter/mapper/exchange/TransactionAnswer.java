package org.isopter.mapper.exchange;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Result;

/**
 * What a server answers to a transaction: of each entry, in their order, where it is.
 *
 * @param stored what became of each
 * @param created how many were not there before
 */
record TransactionAnswer(List<StoredEntry> stored, int created) {

  private static final Pattern PLACE =
      Pattern.compile("(?:.*/)?([A-Z][A-Za-z]+/[A-Za-z0-9.-]{1,64})(?:/_history/([^/]+))?");
  private static final Pattern TAG = Pattern.compile("(?:W/)?\"([A-Za-z0-9.-]{1,64})\"");

  TransactionAnswer {
    stored = List.copyOf(stored);
  }

  /**
   * Reads an answer.
   *
   * @throws IOException when it does not say of each entry that it is stored: the answer may be cut
   *     off, or somebody else's
   */
  static TransactionAnswer of(String json, List<OutgoingEntry> sent) throws IOException {
    List<Raw.Obj> entries =
        RawJson.OWN.read(json) instanceof Result.Ok<Raw> ok
            ? ok.value().objects("entry")
            : List.of();
    if (entries.size() != sent.size()) {
      throw new IOException("an answer that does not say what became of each entry");
    }
    List<StoredEntry> stored = new ArrayList<>();
    int created = 0;
    for (int i = 0; i < entries.size(); i++) {
      Raw.Obj response = entries.get(i).object("response").orElse(Raw.Obj.EMPTY);
      String status = response.string("status").orElse("");
      if (!status.startsWith("2")) {
        throw new IOException("an answer that does not say what became of each entry");
      }
      created += status.startsWith("201") ? 1 : 0;
      stored.add(stored(response, sent.get(i)));
    }
    return new TransactionAnswer(stored, created);
  }

  private static StoredEntry stored(Raw.Obj response, OutgoingEntry sent) {
    Matcher place = PLACE.matcher(response.string("location").orElse(""));
    boolean known = place.matches();
    Optional<String> inPlace = known ? Optional.ofNullable(place.group(2)) : Optional.empty();
    String version =
        response
            .string("etag")
            .map(TAG::matcher)
            .filter(Matcher::matches)
            .map(tag -> tag.group(1))
            .or(() -> inPlace)
            .orElse("");
    return new StoredEntry(
        sent.fullUrl(), sent.name(), known ? place.group(1) : "", version, sent.digest());
  }
}
