package org.isopter.model.clinical.pupil;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Site;

/**
 * The table of causes. A row is written for the right side, the one that is its own; the left is
 * its mirror image. What may cost life stands first, then what may cost sight, then what costs
 * neither.
 */
public final class PupilCauses {

  /**
   * The rows. The first line of each: name, sided or not, grave or not, words, source. Then the
   * words that each sign may have, in the eye itself, in its fellow, or of the pair.
   */
  private static final String ROWS =
      """
      third-nerve | sided | grave | third nerve, compression included | McGee, Evidence-Based Physical Diagnosis ch. 21; relative sparing of the pupil: Trobe 1985, Ophthalmology 92:58
      own: direct any, consensual any, near any, lit any, outline any, lid any, movement full up third, weak-pilocarpine any, segmental-movement any, corectopia any
      fellow: lit any
      pair: unequal none right-light right-alike, double any

      both-third | both | grave | midbrain or both third nerves, raised pressure in the head included | textbook table 16-15, "Pupils in Comatose Patients": middle and fixed, midbrain; raised pressure from memory
      own: direct sluggish absent, consensual sluggish absent, near any, lit any, size middle large, outline any, lid any, movement any, segmental-movement any, corectopia any
      fellow: direct sluggish absent, consensual sluggish absent, near any, lit any, size middle large, outline any, lid any, movement any, segmental-movement any, corectopia any
      pair: unequal any, double any
      needs: own direct sluggish absent, fellow direct sluggish absent, own consensual sluggish absent, fellow consensual sluggish absent

      dorsal-midbrain | both | grave | dorsal midbrain | Trobe, NOVEL, University of Utah, "Parasympathetic": large, better to near than to light
      own: direct sluggish absent, consensual sluggish absent, near brisk sluggish tonic, lit any, size middle large, outline any, lid any, movement full up, corectopia any
      fellow: direct sluggish absent, consensual sluggish absent, near brisk sluggish tonic, lit any, size middle large, outline any, lid any, movement full up, corectopia any
      pair: unequal any, double any
      needs: own direct sluggish absent, fellow direct sluggish absent, own consensual sluggish absent, fellow consensual sluggish absent

      both-narrowed | both | grave | pons, or a substance that narrows both pupils, poisoning included | textbook table 16-15, "Pupils in Comatose Patients": pons, narcotics
      own: direct any, consensual any, near any, lit any, size small, lid any, movement any, dilation-lag any
      fellow: direct any, consensual any, near any, lit any, size small, lid any, movement any, dilation-lag any
      pair: unequal any, double any
      needs: own size small, fellow size small, own direct sluggish absent, fellow direct sluggish absent

      both-widened | both | grave | substance that widens both pupils, poisoning included | textbook table 16-15, "Pupils in Comatose Patients": atropine-like agents, tricyclics
      own: direct sluggish absent, consensual sluggish absent, near sluggish absent, size middle large
      fellow: direct sluggish absent, consensual sluggish absent, near sluggish absent, size middle large
      needs: own direct sluggish absent, fellow direct sluggish absent, own consensual sluggish absent, fellow consensual sluggish absent

      angle-closure | sided | grave | eye with raised pressure (angle closure) | common practice, no source
      own: direct sluggish absent, consensual sluggish absent, near sluggish absent, lit any, size middle large, outline any, pressure 22-to-39 40-or-more, strong-pilocarpine any, cocaine any, segmental-movement any, corectopia any
      fellow: lit any
      pair: unequal none right-light right-alike

      cavernous-sinus | sided | grave | cavernous sinus or orbital apex, several nerves | The Wills Eye Manual, 8th edition, cavernous sinus, critical signs: third, fourth and sixth nerve together, Horner or a wide pupil
      own: direct any, consensual any, near any, lit any, outline any, lid any, movement any, pressure any, sweating any, cocaine any, apraclonidine any, hydroxyamfetamine any, weak-pilocarpine any, dilation-lag any
      fellow: consensual any, lit any
      pair: unequal any, afferent none right, double any
      needs: own lid low, own movement up third abduction several, pair double binocular

      horner | sided | grave | oculosympathetic pathway (Horner), dissection of the carotid artery included | McGee, Evidence-Based Physical Diagnosis ch. 21; Practical Neurology table 6; drug tests: Bremner 2019, Front Neurol 10:55; dissection: Nautiyal 2005, PLoS Med 2:e19; a test is often negative when acute: The Wills Eye Manual, 8th edition 10.2; lag: Pilley and Thompson 1975, BJO 59:731
      own: lid any, movement full abduction, sweating any, cocaine any, apraclonidine any, hydroxyamfetamine any, dilation-lag any
      pair: unequal left-light left-dark left-alike, double any

      iris-acute | sided | grave | iris, injured or inflamed, open injury of the eye included | Atlas of Ophthalmology, photo 6698: after a blow the pupil is middle wide and does not react; inflammation from memory
      own: direct any, consensual any, near any, lit any, outline any, pressure any, cocaine any, hydroxyamfetamine any, strong-pilocarpine any, dilation-lag any, segmental-movement any, corectopia any
      fellow: lit any
      pair: unequal any
      needs: own direct sluggish absent, own consensual sluggish absent, own outline odd, own corectopia present, own segmental-movement present, own front inner

      nerve-and-pupil | sided | grave | optic nerve or retina, and the pupil of that eye (orbital apex, open injury) | computed from the wiring
      own: direct sluggish absent, consensual sluggish absent, near sluggish absent, lit any, outline any, lid any, movement any, pressure any, segmental-movement any, corectopia any
      fellow: consensual any, lit any
      pair: afferent right, field full right-eye other, unequal none right-light right-alike, double any
      needs: own direct sluggish absent, own consensual sluggish absent, own near sluggish absent, pair unequal right-light right-alike

      orbit | sided | grave | orbit, pressing on the optic nerve (bleeding and thyroid eye disease included) | The Wills Eye Manual, 8th edition, cavernous sinus, differential diagnosis: orbital lesions, a defect where the nerve is involved
      own: direct brisk sluggish absent, consensual any, near any, lit any, lid any, movement any, pressure any
      fellow: direct brisk sluggish, consensual brisk sluggish absent, lid any, movement any, pressure any
      pair: afferent right, field full right-eye other, unequal none right-light right-alike, double any
      needs: own movement up third abduction several
      needs: pair afferent right

      optic-nerve | sided | grave | optic nerve or disc | NOVEL, University of Utah, "Afferent Pupillary Defects": the pathway from retina to nerve, a matter of degree
      own: direct brisk sluggish absent, consensual brisk sluggish, pressure any
      fellow: direct brisk sluggish, consensual brisk sluggish absent, pressure any
      pair: afferent right, field full right-eye other

      retina | sided | grave | retina, widespread disease | NOVEL, University of Utah, "Afferent Pupillary Defects": "the retina and optic nerve"
      own: direct brisk sluggish absent, consensual brisk sluggish, pressure any
      fellow: direct brisk sluggish, consensual brisk sluggish absent, pressure any
      pair: afferent right, field full right-eye other

      nerves-unlike | sided | grave | optic nerve or retina more than its fellow, both damaged | computed from the wiring
      own: direct brisk sluggish absent, consensual brisk sluggish absent, pressure any
      fellow: direct brisk sluggish absent, consensual brisk sluggish absent, pressure any
      pair: afferent right, field full right-eye left-eye other
      needs: own consensual sluggish absent, fellow direct sluggish absent

      optic-tract | sided | grave | optic tract | Trobe, NOVEL, University of Utah, "Chiasmal segment"
      own: direct brisk sluggish, consensual brisk sluggish, pressure any
      fellow: direct brisk sluggish, consensual brisk sluggish, pressure any
      pair: afferent left, field full left-half other

      pretectum | sided | grave | pretectum or its brachium, without a field defect | Trobe, NOVEL, University of Utah; light responses after the wiring
      own: direct brisk sluggish, consensual brisk sluggish, pressure any
      fellow: direct brisk sluggish, consensual brisk sluggish, pressure any
      pair: afferent left, field full

      both-nerves | both | grave | optic nerves of both eyes, alike | Trobe, NOVEL, University of Utah: equal damage cancels out
      own: direct brisk sluggish absent, consensual brisk sluggish absent, pressure any
      fellow: direct brisk sluggish absent, consensual brisk sluggish absent, pressure any
      pair: field full other

      both-retinas | both | grave | retinas of both eyes, alike | computed from the wiring: the pathway is that of the nerves
      own: direct brisk sluggish absent, consensual brisk sluggish absent, pressure any
      fellow: direct brisk sluggish absent, consensual brisk sluggish absent, pressure any
      pair: field full other

      argyll-robertson | both | grave | Argyll Robertson pupils, small and irregular | Trobe, NOVEL, University of Utah, "Argyll Robertson Pupil": small, light-near dissociation, never with tonic or segmental movement; irregular from memory
      own: direct sluggish absent, consensual sluggish absent, lit any, size small middle, outline any, dilation-lag any, corectopia any
      fellow: direct sluggish absent, consensual sluggish absent, lit any, size small middle, outline any, dilation-lag any, corectopia any
      pair: unequal any
      needs: own direct sluggish absent, fellow direct sluggish absent, own consensual sluggish absent, fellow consensual sluggish absent

      iris-old | sided | not grave | iris, old damage or operation | StatPearls, "Traumatic Iris Reconstruction": wide or sluggish pupil; operation from memory
      own: front quiet red, direct any, consensual any, near any, lit any, outline any, cocaine any, hydroxyamfetamine any, strong-pilocarpine any, dilation-lag any, segmental-movement any, corectopia any
      fellow: lit any
      pair: unequal any
      needs: own direct sluggish absent, own consensual sluggish absent, own outline odd, own corectopia present, own segmental-movement present

      widened | sided | not grave | eye under a drop or substance that widens the pupil | Practical Neurology table 6; strong pilocarpine fails: common practice, no source
      own: front quiet red, direct sluggish absent, consensual sluggish absent, near sluggish absent, lit any, size middle large, strong-pilocarpine unchanged
      fellow: lit any
      pair: unequal right-light right-alike

      narrowed | sided | not grave | eye under a drop or substance that narrows the pupil | from memory
      own: front quiet red, direct any, consensual any, near any, lit any, size small middle, cocaine any, dilation-lag any
      fellow: lit any
      pair: unequal left-light left-dark left-alike

      tonic | sided | not grave | tonic pupil (Adie) | Practical Neurology table 6: "no or poor response to light"; weak pilocarpine: Yoo 2021, Sci Rep 11:10089
      own: front quiet red, direct sluggish tonic absent, consensual sluggish tonic absent, near sluggish tonic, lit any, outline any, weak-pilocarpine any, dilation-lag any, segmental-movement any, corectopia any
      fellow: lit any
      pair: unequal none right-light right-alike left-light left-dark left-alike

      both-tonic | both | not grave | tonic pupils of both eyes | from memory
      own: front quiet red, direct sluggish tonic absent, consensual sluggish tonic absent, near sluggish tonic, lit any, outline any, weak-pilocarpine any, dilation-lag any, segmental-movement any, corectopia any
      fellow: front quiet red, direct sluggish tonic absent, consensual sluggish tonic absent, near sluggish tonic, lit any, outline any, weak-pilocarpine any, dilation-lag any, segmental-movement any, corectopia any
      pair: unequal any

      no-lesion | both | not grave | inequality without a lesion | Practical Neurology table 6: the same in all lights; 1 mm or more is rare: Walsh and Hoyt as quoted by Stanford
      own: front quiet red
      fellow: front quiet red
      pair: unequal none right-dark right-alike left-dark left-alike, amount small
      """;

  private static final List<PupilCause> ALL = sides(parse());

  private PupilCauses() {}

  /** Returns every row on every side it may have, the grave ones first. */
  public static List<PupilCause> all() {
    return ALL;
  }

  /** Returns the row of that name on a side. */
  public static PupilCause of(String id, Site side) {
    return ALL.stream()
        .filter(one -> one.id().equals(id) && one.side() == side)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no row " + id + " " + side));
  }

  private static List<PupilCause> sides(List<PupilCause> rows) {
    return rows.stream()
        .flatMap(row -> row.side() == Site.BOTH ? Stream.of(row) : both(row))
        .toList();
  }

  private static Stream<PupilCause> both(PupilCause row) {
    return Stream.of(row, row.mirrored());
  }

  private static List<PupilCause> parse() {
    return Arrays.stream(ROWS.split("\n\n")).map(PupilCauses::row).toList();
  }

  private static PupilCause row(String block) {
    List<String> lines = new ArrayList<>(Arrays.asList(block.trim().split("\n")));
    String[] head = lines.remove(0).split(" *\\| *", -1);
    Map<PupilSigns.Key, Set<String>> allowed = new HashMap<>();
    List<Map<PupilSigns.Key, Set<String>>> needs = new ArrayList<>();
    for (String line : lines) {
      String where = line.substring(0, line.indexOf(':'));
      String cells = line.substring(line.indexOf(':') + 1);
      Map<PupilSigns.Key, Set<String>> group = new HashMap<>();
      for (String cell : cells.split(",", -1)) {
        if (where.equals("needs")) {
          String text = cell.trim();
          put(group, text.substring(0, text.indexOf(' ')), text.substring(text.indexOf(' ')));
        } else {
          put(allowed, where, cell);
        }
      }
      if (!group.isEmpty()) {
        needs.add(group);
      }
    }
    Site side = head[1].equals("sided") ? Site.RIGHT : Site.BOTH;
    boolean grave = head[2].equals("grave");
    return new PupilCause(
        head[0], head[3], side, grave, allowed, List.copyOf(needs), new Citation(head[4]));
  }

  private static void put(Map<PupilSigns.Key, Set<String>> cells, String where, String cell) {
    String text = cell.trim();
    String name = text.substring(0, text.indexOf(' '));
    String words = text.substring(text.indexOf(' '));
    PupilSign sign = PupilSign.valueOf(name.toUpperCase(Locale.ROOT).replace('-', '_'));
    Set<String> set = words.trim().equals("any") ? sign.words() : PupilSign.split(words);
    if (!sign.words().containsAll(set)) {
      throw new IllegalStateException(sign + " is never " + set);
    }
    cells.put(new PupilSigns.Key(sign, site(where)), set);
  }

  private static Site site(String where) {
    return switch (where) {
      case "own" -> Site.RIGHT;
      case "fellow" -> Site.LEFT;
      default -> Site.BOTH;
    };
  }
}
