package org.isopter.mapper.mllp;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A listener on loopback, its folder, and what it tells; it leaves nothing half behind. */
@Timeout(60)
abstract class ReceiverFixture {

  static final int LONGEST = 20_000;
  static final int CONNECTIONS = 16;

  @TempDir Path temp;

  final List<String> heard = new CopyOnWriteArrayList<>();
  Path inbox = Path.of("");
  MessageFolder folder;
  MessageListener listener;

  final ListenerEvents events =
      new ListenerEvents() {
        @Override
        public void kept(Path file, boolean before) {
          heard.add(before ? "before" : "kept");
        }

        @Override
        public void refused(String sender, String why) {
          heard.add(why);
        }
      };

  static ListenerOptions options(Duration idle) {
    return new ListenerOptions(
        new InetSocketAddress(InetAddress.getLoopbackAddress(), 0),
        LONGEST,
        CONNECTIONS,
        idle,
        Optional.empty(),
        false);
  }

  @BeforeEach
  void start() throws IOException {
    inbox = temp.resolve("inbox");
    folder = MessageFolder.at(inbox);
    listener = MessageListener.start(options(Duration.ofSeconds(20)), folder, events);
  }

  @AfterEach
  void stop() throws IOException {
    listener.close();
    folder.close();
    assertEquals(List.of(), hidden());
  }

  void restart(Inbox other, Duration idle) throws IOException {
    listener.close();
    listener = MessageListener.startWith(options(idle), other, events);
  }

  List<String> hidden() throws IOException {
    return names().stream().filter(name -> name.startsWith(".")).toList();
  }

  List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(inbox)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  List<Path> messages() throws IOException {
    try (Stream<Path> files = Files.list(inbox)) {
      return files.filter(file -> file.toString().endsWith(".hl7")).sorted().toList();
    }
  }

  static String message(String id) throws IOException {
    return Files.readString(Path.of("../docs/results.hl7"))
        .replace("|m-1|", "|" + id + "|")
        .replace('\n', '\r');
  }

  TestSender sender() throws IOException {
    return TestSender.to(listener.port());
  }

  /** Sends a message over a connection of its own and returns the segments of the answer. */
  List<String> answer(String message) throws IOException {
    try (TestSender sender = sender()) {
      sender.send(TestSender.framed(message));
      return List.of(sender.answer().split("\r", -1));
    }
  }

  static String msa(List<String> answer) {
    return answer.size() > 1 ? answer.get(1) : answer.toString();
  }

  static String err(List<String> answer) {
    List<String> fields = List.of(answer.get(2).split("\\|", -1));
    return fields.get(2) + " " + fields.get(3).replaceAll("\\^.*", "");
  }

  /** What is told comes after the answer; the time limit of the tests bounds the wait. */
  void awaitEvent(String event) {
    while (!heard.contains(event)) {
      Thread.onSpinWait();
    }
  }
}
