package org.isopter.profiles;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Validates many observations as the entries of one bundle: the reference validator reads tables of
 * a megabyte and a half for each call, which takes longer than to judge an observation.
 */
final class ManyAtOnce {

  private static final Pattern ENTRY = Pattern.compile("Bundle\\.entry\\[(\\d+)]\\.resource");

  private ManyAtOnce() {}

  /** Returns what the validator says of each observation, as of one alone, by its key. */
  static Map<String, List<String>> said(ProfileValidator validator, Map<String, String> all) {
    List<String> keys = List.copyOf(all.keySet());
    Map<String, List<String>> said = new HashMap<>();
    keys.forEach(key -> said.put(key, new ArrayList<>()));
    for (ValidationMessage message :
        validator.validate(bundle(keys.stream().map(all::get).toList()))) {
      Matcher entry = ENTRY.matcher(message.path());
      if (!entry.lookingAt()) {
        throw new IllegalStateException("of no entry: " + message);
      }
      String path = "Observation" + message.path().substring(entry.end());
      requireNonNull(said.get(keys.get(Integer.parseInt(entry.group(1)))))
          .add(new ValidationMessage(message.severity(), path, message.text()).toString());
    }
    return said;
  }

  private static String bundle(List<String> observations) {
    return IntStream.range(0, observations.size())
        .mapToObj(
            at ->
                "{\"fullUrl\": \"urn:uuid:6fbc54bb-1fd5-4b1b-b4d0-%012d\", \"resource\": %s}"
                    .formatted(at, observations.get(at)))
        .collect(
            Collectors.joining(
                ",",
                "{\"resourceType\": \"Bundle\", \"type\": \"collection\", \"entry\": [",
                "]}"));
  }
}
