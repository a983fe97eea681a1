package org.isopter.mapper.exchange;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.http.ServerClient;
import org.isopter.mapper.http.ServerException;
import org.isopter.mapper.http.ServerReply;
import org.isopter.mapper.http.ServerRequest;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;

/**
 * Sends transactions so that nothing is lost and nothing is stored twice: every entry is an update,
 * or a creation under a condition, and what is stored is in a journal. What is another since it was
 * sent replaces the version that was stored, and no version of somebody else.
 */
public final class Sender {

  /** The size of a transaction that most servers take: 4 MB. */
  public static final long USUAL_SIZE = 4L << 20;

  private static final Set<Integer> CONFLICTS = Set.of(409, 412);

  /**
   * A search of which one thing at most may be found (FHIR R4, "conditional update") finds more.
   */
  private static final int SEVERAL = 412;

  private final ServerClient client;
  private final Journal journal;
  private final SendPlan plan;

  /** Makes a sender. */
  public Sender(ServerClient client, Journal journal, SendPlan plan) {
    this.client = client;
    this.journal = journal;
    this.plan = plan;
  }

  /**
   * What became of a transaction.
   *
   * @param entries how many entries it has
   * @param created how many of them were new to the server, in this run
   * @param before whether it was stored by an earlier run, so that nothing was sent
   */
  public record Sent(int entries, int created, boolean before) {}

  /**
   * Sends a transaction, unless the journal says that it is stored.
   *
   * @param bundle the JSON of a bundle
   * @return what became of it, or why it was not taken
   * @throws ServerException when no further transaction would be taken either
   */
  public Result<Sent> send(byte[] bundle) {
    return Transaction.of(bundle, plan.byId()).flatMap(this::send);
  }

  private Result<Sent> send(Transaction given) {
    String digest = given.digest();
    if (journal.isReplaced(digest, given.name())) {
      return Result.refused(
          new Fault(
              "",
              "a version that was stored, and has been replaced by a later one since",
              "the latest version",
              "if it is to be in force again, send it with another journal"));
    }
    if (journal.isSent(digest)) {
      return Result.ok(new Sent(given.entries().size(), 0, true));
    }
    Transaction transaction = given.after(journal.latest(given.name()));
    return TransactionParts.of(transaction.entries(), plan.largest())
        .flatMap(
            parts -> {
              try {
                return Result.ok(send(transaction, parts, digest));
              } catch (ServerException refused) {
                return one(refused);
              } catch (FaultException refused) {
                return Result.refused(refused.faults());
              }
            });
  }

  private static Result<Sent> one(ServerException refused) {
    if (refused.isOfAll()) {
      throw refused;
    }
    return Result.refused(refused.fault());
  }

  private Sent send(Transaction transaction, List<List<OutgoingEntry>> parts, String digest) {
    Map<String, String> places = new HashMap<>();
    List<String> sent = new ArrayList<>();
    int created = 0;
    for (List<OutgoingEntry> part : parts) {
      String name = Transaction.digest(part);
      Optional<List<StoredEntry>> before = journal.part(name);
      TransactionAnswer answer =
          before
              .map(stored -> new TransactionAnswer(stored, 0))
              .orElseGet(() -> post(transaction, pointing(part, places), part));
      if (before.isEmpty()) {
        journal.put(name, answer.stored());
      }
      created += answer.created();
      note(part, answer.stored(), places);
      sent.add(name);
    }
    journal.end(digest, transaction.name(), sent);
    return new Sent(transaction.entries().size(), created, false);
  }

  private static List<OutgoingEntry> pointing(
      List<OutgoingEntry> part, Map<String, String> places) {
    return part.stream().map(entry -> entry.pointing(places)).toList();
  }

  /** Where a server does not say where something is, a search for it stands in the reference. */
  private static void note(
      List<OutgoingEntry> part, List<StoredEntry> stored, Map<String, String> places) {
    for (int i = 0; i < part.size(); i++) {
      Optional<String> place = Optional.of(stored.get(i).place()).filter(at -> !at.isEmpty());
      String name = part.get(i).fullUrl();
      place.or(part.get(i)::search).ifPresent(at -> places.put(name, at));
    }
  }

  private TransactionAnswer post(
      Transaction transaction, List<OutgoingEntry> part, List<OutgoingEntry> kept) {
    try {
      return posted(transaction, part, kept);
    } catch (ServerException refused) {
      boolean guarded = part.stream().anyMatch(OutgoingEntry::isGuarded);
      if (!CONFLICTS.contains(refused.status()) || !guarded) {
        throw refused;
      }
      return new StoredBefore(client)
          .now(part)
          .map(now -> posted(transaction, now, kept))
          .orElseThrow(() -> changed(refused));
    }
  }

  private TransactionAnswer posted(
      Transaction transaction, List<OutgoingEntry> part, List<OutgoingEntry> kept) {
    ServerRequest request =
        ServerRequest.transaction(client.address().base(), transaction.json(part));
    return client.send(request, reply -> answer(reply, kept));
  }

  private TransactionAnswer answer(ServerReply reply, List<OutgoingEntry> kept) throws IOException {
    String text = reply.text();
    if (reply.isGood()) {
      return TransactionAnswer.of(text, kept);
    }
    String seen = "status " + reply.status() + client.said(text);
    throw ServerException.ofOne(
        Fault.of(
            "",
            seen,
            reply.status() == SEVERAL
                ? "an identifier that fits at most one resource on the server"
                : "a transaction that the server takes"),
        reply.status());
  }

  private static ServerException changed(ServerException refused) {
    return ServerException.ofOne(
        new Fault(
            "",
            refused.fault().seen() + "; it was changed on the server since it was sent",
            "the version that the journal names",
            "fetch it, look at both, and decide: nothing was written over"),
        refused.status());
  }

  /** Returns what would be sent for a transaction, in parts, without sending anything. */
  public Result<List<Part>> parts(byte[] bundle) {
    return Transaction.of(bundle, plan.byId()).flatMap(this::parts);
  }

  private Result<List<Part>> parts(Transaction given) {
    if (journal.isSent(given.digest())) {
      return Result.ok(List.of());
    }
    Transaction transaction = given.after(journal.latest(given.name()));
    return TransactionParts.of(transaction.entries(), plan.largest())
        .map(parts -> parts.stream().map(part -> part(transaction, part)).toList());
  }

  private static Part part(Transaction transaction, List<OutgoingEntry> part) {
    int size = transaction.json(part).getBytes(java.nio.charset.StandardCharsets.UTF_8).length;
    return new Part(size, part.stream().map(OutgoingEntry::shown).toList());
  }

  /**
   * A request that would be sent.
   *
   * @param size the bytes of its body
   * @param entries the method and the address of each entry
   */
  public record Part(int size, List<String> entries) {
    public Part {
      entries = List.copyOf(entries);
    }
  }
}
