package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;

/** The table of questions that the pages may ask, by method and name. */
public final class JsonApi {
  private final Map<String, Action> actions = new HashMap<>();

  /** Answers one question. */
  @FunctionalInterface
  public interface Action {
    /**
     * Answers.
     *
     * @param ask the request
     * @return the answer
     * @throws Trouble what the person has to know
     * @throws VaultException if something does not verify
     * @throws IOException if a file cannot be used
     */
    JsonElement answer(Ask ask) throws Trouble, VaultException, IOException;
  }

  /** Answers a question whose name ends in an id. */
  @FunctionalInterface
  public interface ActionOn {
    /**
     * Answers.
     *
     * @param id the id in the question's name, not yet looked at
     * @param ask the request
     * @return the answer
     * @throws Trouble what the person has to know
     * @throws VaultException if something does not verify
     * @throws IOException if a file cannot be used
     */
    JsonElement answer(String id, Ask ask) throws Trouble, VaultException, IOException;
  }

  private final Map<String, ActionOn> actionsOn = new HashMap<>();

  /**
   * Adds an exact question, for example {@code GET state}.
   *
   * @param methodAndName what is asked
   * @param action answers it
   */
  public void on(String methodAndName, Action action) {
    actions.put(methodAndName, action);
  }

  /**
   * Adds a question with one id in it, for example {@code POST jobs/*}{@code /stop}.
   *
   * @param methodAndPattern what is asked
   * @param action answers it
   */
  public void onEach(String methodAndPattern, ActionOn action) {
    actionsOn.put(methodAndPattern, action);
  }

  void answer(String name, Request request, Response response, Callback callback)
      throws Trouble, VaultException, IOException {
    Replies.json(response, callback, answer(name, request.getMethod(), new Ask(request)));
  }

  private JsonElement answer(String name, String method, Ask ask)
      throws Trouble, VaultException, IOException {
    String reading = method.equals("HEAD") ? "GET" : method;
    Action action = actions.get(reading + " " + name);
    if (action != null) {
      return action.answer(ask);
    }
    String[] steps = name.split("/", -1);
    if (steps.length > 1) {
      String id = steps[1];
      steps[1] = "*";
      ActionOn actionOn = actionsOn.get(reading + " " + String.join("/", steps));
      if (actionOn != null) {
        return actionOn.answer(id, ask);
      }
    }
    throw unknown(name);
  }

  private Trouble unknown(String name) {
    boolean otherMethod =
        actions.keySet().stream().anyMatch(key -> key.substring(key.indexOf(' ') + 1).equals(name));
    return otherMethod
        ? new Trouble(TroubleCode.METHOD, "This is not asked this way.", "Load the page again.")
        : new Trouble(TroubleCode.NOT_FOUND, "There is no such question.", "Load the page again.");
  }
}
