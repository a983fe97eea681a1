package org.isopter.mapper.pool;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.isopter.mapper.fhir.Version;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.mapper.privacy.Suppression;

/** Writes a FHIR Provenance of a run: what was done, when and with what, and no names. */
final class RunProvenance {

  private RunProvenance() {}

  static String of(
      PoolPlan plan,
      PoolCounts counts,
      PoolResult.Tables tables,
      Suppression.Taken taken,
      Instant now) {
    Map<String, Raw> whole = new LinkedHashMap<>();
    whole.put("resourceType", Raw.of("Provenance"));
    whole.put("target", list(display(target(plan, tables, taken))));
    whole.put("recorded", Raw.of(now.truncatedTo(ChronoUnit.SECONDS).toString()));
    whole.put("activity", activity(plan.deidentifier().isPresent()));
    whole.put("agent", list(agent()));
    whole.put("entity", list(entity(counts)));
    return RawJson.write(new Raw.Obj(whole)) + "\n";
  }

  /** Says what stands in the tables that are shared, and what was taken out of them. */
  private static String target(PoolPlan plan, PoolResult.Tables tables, Suppression.Taken taken) {
    String shared =
        "the tables of this folder: %d persons with %d examinations, %d rows of findings and %d of eyes"
            .formatted(tables.persons(), tables.examinations(), tables.findings(), tables.eyes());
    String out =
        "%s; %d persons with %d examinations were taken out, since fewer than %d persons share their %s, or their visits fill the period"
            .formatted(
                shared,
                taken.persons(),
                taken.examinations(),
                plan.smallest(),
                String.join(", ", plan.traits()));
    String bands =
        taken.band() > 1 ? "; ages are in bands of %d years".formatted(taken.band()) : "";
    String rounded =
        plan.deidentifier()
            .map(one -> one.rounding().toString())
            .filter(steps -> !steps.isEmpty())
            .map(steps -> "; numbers are rounded to multiples: " + steps)
            .orElse("");
    return (plan.suppress() ? out + bands : shared) + rounded;
  }

  private static Raw activity(boolean pseudonyms) {
    return concept(
        "http://terminology.hl7.org/CodeSystem/iso-21089-lifecycle",
        pseudonyms ? "pseudonymize" : "extract",
        pseudonyms ? "Pseudonymize Record Lifecycle Event" : "Extract Record Lifecycle Event");
  }

  private static Raw agent() {
    Map<String, Raw> agent = new LinkedHashMap<>();
    agent.put(
        "type",
        concept(
            "http://terminology.hl7.org/CodeSystem/provenance-participant-type",
            "assembler",
            "Assembler"));
    agent.put("who", display("Isopter " + Version.TEXT));
    return new Raw.Obj(agent);
  }

  private static Raw entity(PoolCounts counts) {
    Map<String, Raw> entity = new LinkedHashMap<>();
    entity.put("role", Raw.of("source"));
    entity.put(
        "what",
        display(
            "%d documents, %d of them refused; %d resources, %d pooled and %d left over"
                .formatted(
                    counts.documents(),
                    counts.refused(),
                    counts.resources(),
                    counts.pooled(),
                    counts.kept())));
    return new Raw.Obj(entity);
  }

  private static Raw concept(String system, String code, String display) {
    Map<String, Raw> coding = new LinkedHashMap<>();
    coding.put("system", Raw.of(system));
    coding.put("code", Raw.of(code));
    coding.put("display", Raw.of(display));
    return new Raw.Obj(Map.of("coding", list(new Raw.Obj(coding))));
  }

  private static Raw display(String text) {
    return new Raw.Obj(Map.of("display", Raw.of(text)));
  }

  private static Raw list(Raw only) {
    return Raw.of(List.of(only));
  }
}
