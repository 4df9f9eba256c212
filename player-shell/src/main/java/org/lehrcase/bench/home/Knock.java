package org.lehrcase.bench.home;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Asks the running copy for a one-time address. */
public final class Knock {
  private static final int TIMEOUT_MILLIS = 3000;
  private static final int MAX_ANSWER_BYTES = 8192;
  private static final Pattern ENTER = Pattern.compile("\"enter\":\"(/enter/[0-9a-f]{32})\"");

  private Knock() {}

  /**
   * Asks.
   *
   * @param reach where the running copy is and the word it wants
   * @return the one-time address, or nothing if it does not answer
   */
  public static Optional<String> at(RunningCopy.Reach reach) {
    String own = "127.0.0.1:" + reach.port();
    String request =
        "POST /knock HTTP/1.1\r\nHost: "
            + own
            + "\r\nX-Lehrcase-Knock: "
            + reach.knockWord()
            + "\r\nContent-Length: 0\r\nConnection: close\r\n\r\n";
    try (Socket socket = new Socket()) {
      InetAddress loopback = InetAddress.getByAddress(new byte[] {127, 0, 0, 1});
      socket.connect(new InetSocketAddress(loopback, reach.port()), TIMEOUT_MILLIS);
      socket.setSoTimeout(TIMEOUT_MILLIS);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      InputStream in = socket.getInputStream();
      String answer = new String(in.readNBytes(MAX_ANSWER_BYTES), StandardCharsets.UTF_8);
      Matcher enter = ENTER.matcher(answer);
      return enter.find() ? Optional.of("http://" + own + enter.group(1)) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
