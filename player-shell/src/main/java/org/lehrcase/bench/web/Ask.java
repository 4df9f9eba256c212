package org.lehrcase.bench.web;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.util.Fields;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/** One request to the JSON API. */
public final class Ask {
  private static final int MAX_JSON_BYTES = 1 << 16;

  /** A license file with the key rows of every edition stays far below. */
  static final int MAX_FILE_BYTES = 4 << 20;

  private final Request request;

  Ask(Request request) {
    this.request = request;
  }

  /**
   * Returns a query parameter.
   *
   * @param name its name
   * @return its value
   * @throws Trouble if it is missing
   */
  public String query(String name) throws Trouble {
    Fields.@Nullable Field field = Request.extractQueryParameters(request).get(name);
    if (field == null || field.getValue() == null) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST, "The address lacks \"" + name + "\".", "Go to My courses.");
    }
    return field.getValue();
  }

  /**
   * Returns the body as a JSON object.
   *
   * @return the object
   * @throws Trouble if it is no JSON object, or larger than 64 KiB
   * @throws IOException if the request ends early
   */
  public JsonObject json() throws Trouble, IOException {
    return json(MAX_JSON_BYTES);
  }

  /**
   * Returns a longer body as a JSON object: a plan with many outlines.
   *
   * @param limitBytes the most that is read
   * @return the object
   * @throws Trouble if it is no JSON object, or larger
   * @throws IOException if the request ends early
   */
  JsonObject json(int limitBytes) throws Trouble, IOException {
    requireType("application/json");
    return Json.object(body(limitBytes));
  }

  /**
   * Returns the body as a stream that whoever reads it has to bound.
   *
   * @return the octets as they come
   * @throws Trouble if it is sent as something else
   */
  public InputStream stream() throws Trouble {
    requireType("application/octet-stream");
    return Content.Source.asInputStream(request);
  }

  /**
   * Returns the body as the bytes of a file.
   *
   * @return the bytes
   * @throws Trouble if it is sent as something else, or larger than 4 MiB
   * @throws IOException if the request ends early
   */
  public byte[] file() throws Trouble, IOException {
    return file(MAX_FILE_BYTES);
  }

  /**
   * Returns a longer body as the bytes of a file, such as a photo.
   *
   * @param limitBytes the most that is read
   * @return the bytes
   * @throws Trouble if it is sent as something else, or larger
   * @throws IOException if the request ends early
   */
  public byte[] file(int limitBytes) throws Trouble, IOException {
    requireType("application/octet-stream");
    return body(limitBytes);
  }

  /**
   * Returns the name that came with the file, for messages only.
   *
   * @return the name as the page sent it
   */
  public String fileName() {
    String name = String.valueOf(request.getHeaders().get("X-File-Name"));
    try {
      return URLDecoder.decode(name, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      return "file";
    }
  }

  private void requireType(String type) throws Trouble {
    String found = String.valueOf(request.getHeaders().get("Content-Type"));
    if (!found.equals(type) && !found.startsWith(type + ";")) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST, "The request is not " + type + ".", "Load the page again.");
    }
  }

  private byte[] body(int limitBytes) throws Trouble, IOException {
    if (request.getLength() > limitBytes) {
      throw tooLarge(limitBytes);
    }
    try (InputStream in = Content.Source.asInputStream(request)) {
      byte[] body = in.readNBytes(limitBytes + 1);
      if (body.length > limitBytes) {
        throw tooLarge(limitBytes);
      }
      return body;
    }
  }

  private static Trouble tooLarge(int limitBytes) {
    return new Trouble(
        TroubleCode.TOO_LARGE,
        "This is larger than " + limitBytes / 1024 + " KiB, so it is none of Lehrcase's letters.",
        "Choose the license, the key letter, or the folder of the edition.");
  }
}
