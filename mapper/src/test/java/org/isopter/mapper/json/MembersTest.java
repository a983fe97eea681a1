package org.isopter.mapper.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The members of an object are a map in the order of the document, however many there are. */
class MembersTest {

  @Test
  void areTheMapThatTheyWereMadeOf() {
    Random random = new Random(1);
    for (int size = 0; size < 40; size++) {
      Map<String, Raw> map = new LinkedHashMap<>();
      while (map.size() < size) {
        map.put("m" + random.nextInt(1_000), Raw.of("v" + map.size()));
      }
      Map<String, Raw> members = new Raw.Obj(map).members();
      assertEquals(map, members);
      assertEquals(members, map);
      assertEquals(map.hashCode(), members.hashCode());
      assertEquals(new ArrayList<>(map.keySet()), new ArrayList<>(members.keySet()));
      assertEquals(new ArrayList<>(map.values()), new ArrayList<>(members.values()));
      map.forEach((name, value) -> assertEquals(value, members.get(name)));
      assertFalse(members.containsKey("n"));
    }
  }

  @Test
  void doNotChange() {
    Map<String, Raw> members = new Raw.Obj(Map.of("a", Raw.of("b"))).members();
    assertThrows(UnsupportedOperationException.class, () -> members.put("c", Raw.of("d")));
    assertThrows(UnsupportedOperationException.class, () -> members.values().clear());
    assertThrows(UnsupportedOperationException.class, () -> members.entrySet().clear());
    assertThrows(
        UnsupportedOperationException.class, () -> Raw.of(List.of()).items().add(Raw.of("e")));
  }

  @Test
  void countTheLeavesThatAreListed() {
    Raw value =
        RawJson.OWN
            .read("{\"a\":{},\"b\":[],\"c\":[1,{\"d\":null}],\"e\":{\"f\":[[],2]}}")
            .orThrow();
    assertEquals(6, value.leafCount());
    assertEquals(value.leaves().size(), value.leafCount());
    assertEquals(1, Raw.Obj.EMPTY.leafCount());
  }
}
