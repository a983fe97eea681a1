package org.isopter.mapper.message;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.json.Raw;

/** The segments of one observation: its OBX, its remarks, and an OBX for each of its parts. */
final class ResultSegments {

  private static final int CODE = 3;
  private static final int SUB_ID = 4;
  private static final int STATUS = 11;
  private static final int PERFORMED = 14;
  private static final int METHOD = 17;
  private static final int SITE = 20;
  private static final int COMMENT = 3;

  private final Raw.Obj observation;
  private final String status;

  ResultSegments(Raw.Obj observation, String status) {
    this.observation = observation;
    this.status = status;
  }

  /**
   * Returns the segments; empty where something has no form in a message.
   *
   * @param id the sub-id of the whole
   */
  Optional<List<SegmentDraft>> read(String id) {
    List<SegmentDraft> all = new ArrayList<>();
    Optional<SegmentDraft> whole = result(observation, id);
    whole.map(this::withTimeAndSite).ifPresent(all::add);
    int line = 1;
    for (Raw.Obj note : observation.objects("note")) {
      String text = SegmentText.escaped(note.string("text").orElse(""));
      all.add(
          new SegmentDraft("NTE").put(1, String.valueOf(line++)).put(2, "L").put(COMMENT, text));
    }
    int number = 1;
    List<Raw.Obj> parts = observation.objects("component");
    for (Raw.Obj part : parts) {
      result(part, id + "." + number).ifPresent(all::add);
      number++;
    }
    int wanted = 1 + observation.objects("note").size() + parts.size();
    return all.size() == wanted ? Optional.of(all) : Optional.empty();
  }

  private SegmentDraft withTimeAndSite(SegmentDraft whole) {
    observation
        .string("effectiveDateTime")
        .ifPresent(at -> whole.put(PERFORMED, SegmentText.time(OffsetDateTime.parse(at))));
    concept("method").ifPresent(text -> whole.put(METHOD, text));
    concept("bodySite").ifPresent(text -> whole.put(SITE, text));
    return whole;
  }

  private Optional<String> concept(String name) {
    return observation.object(name).flatMap(SegmentText::coded);
  }

  private Optional<SegmentDraft> result(Raw.Obj holder, String id) {
    Optional<String> code = holder.object("code").flatMap(SegmentText::coded);
    if (code.isEmpty()) {
      return Optional.empty();
    }
    SegmentDraft draft =
        new SegmentDraft("OBX").put(CODE, code.get()).put(SUB_ID, id).put(STATUS, status);
    boolean written =
        holder.members().entrySet().stream()
            .filter(one -> ResultValue.isValue(one.getKey()))
            .allMatch(one -> ResultValue.put(draft, one.getKey(), one.getValue()));
    return written ? Optional.of(draft) : Optional.empty();
  }
}
