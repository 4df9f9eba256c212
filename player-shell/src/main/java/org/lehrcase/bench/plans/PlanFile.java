package org.lehrcase.bench.plans;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Locale;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.JsonText;

/** The one file in which a plan travels with its picture, and the file for a course. */
public final class PlanFile {
  /** Most octets of a file. */
  public static final int MOST_BYTES = 12 << 20;

  private static final String FORMAT = "lehrcase_plan";
  private static final Gson GSON = new GsonBuilder().setPrettyPrinting().create();

  private final JsonObject plan;
  private final Optional<byte[]> picture;

  private PlanFile(JsonObject plan, Optional<byte[]> picture) {
    this.plan = plan;
    this.picture = picture;
  }

  /** Returns the plan; its picture has no id yet, since every bench gives its own. */
  public JsonObject plan() {
    return plan;
  }

  /** Returns the picture that came with it, not yet believed. */
  public Optional<byte[]> picture() {
    return picture;
  }

  /**
   * Writes a plan with its picture.
   *
   * @param plan the plan
   * @param jpeg its picture, empty if it has none
   */
  public static byte[] write(JsonObject plan, Optional<byte[]> jpeg) {
    var file = new JsonObject();
    file.addProperty(FORMAT, 1);
    file.add("plan", plan);
    jpeg.ifPresent(
        bytes -> file.addProperty("picture_jpeg", Base64.getEncoder().encodeToString(bytes)));
    return GSON.toJson(file).getBytes(StandardCharsets.UTF_8);
  }

  /**
   * Writes a plan for a course: without the picture, which stays with the student, but with what
   * was said about its permission.
   */
  public static byte[] forCourse(JsonObject plan) {
    JsonObject given = plan.deepCopy();
    given.remove("picture");
    return GSON.toJson(given).getBytes(StandardCharsets.UTF_8);
  }

  /** Returns a file name without what systems do not allow in one. */
  public static String fileName(String planName, String ending) {
    String safe = planName.replaceAll("[\\\\/:*?\"<>|\\p{Cntrl}]", " ").strip();
    return (safe.isEmpty() ? "My piece" : safe) + ending;
  }

  /**
   * Reads a file: one of these, or a plan by itself, as a course has it.
   *
   * @param file its octets
   * @throws FieldTrouble if it is neither
   */
  public static PlanFile read(byte[] file) throws FieldTrouble {
    JsonObject json = JsonText.object(new String(file, StandardCharsets.UTF_8));
    if (!json.has(FORMAT)) {
      return alone(json);
    }
    String version = json.get(FORMAT).toString().toLowerCase(Locale.ROOT);
    if (!version.equals("1") || !json.has("plan") || !json.get("plan").isJsonObject()) {
      throw new FieldTrouble(FORMAT, "this file was written by a newer Lehrcase");
    }
    Optional<byte[]> jpeg = Optional.empty();
    if (json.has("picture_jpeg")) {
      try {
        jpeg = Optional.of(Base64.getDecoder().decode(json.get("picture_jpeg").getAsString()));
      } catch (IllegalArgumentException | UnsupportedOperationException e) {
        throw new FieldTrouble("picture_jpeg", "the picture in this file is damaged");
      }
    }
    return new PlanFile(json.getAsJsonObject("plan"), jpeg);
  }

  private static PlanFile alone(JsonObject json) throws FieldTrouble {
    if (!json.has("subjects") || !json.get("subjects").isJsonArray()) {
      throw new FieldTrouble("subjects", "this is no plan of sheets: it has no subjects");
    }
    json.remove("picture");
    return new PlanFile(json, Optional.empty());
  }
}
