package org.lehrcase.bench.measure;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/** The web server from Debian, serving a folder in the clear and over TLS 1.3 with AES-256-GCM. */
final class Nginx implements AutoCloseable {
  private static final String CONFIGURATION =
      """
      daemon off; pid %1$s/nginx.pid; error_log %1$s/error.log; worker_processes 2;
      user root;
      events { worker_connections 256; }
      http {
        access_log off; sendfile on; tcp_nopush on; keepalive_requests 1000000;
        client_body_temp_path %1$s/t1; proxy_temp_path %1$s/t2; fastcgi_temp_path %1$s/t3;
        uwsgi_temp_path %1$s/t4; scgi_temp_path %1$s/t5;
        server { listen 127.0.0.1:%3$d; root "%2$s"; }
        server {
          listen 127.0.0.1:%4$d ssl; root "%2$s";
          ssl_certificate %1$s/cert.pem; ssl_certificate_key %1$s/key.pem;
          ssl_protocols TLSv1.3; ssl_conf_command Ciphersuites TLS_AES_256_GCM_SHA384;
        }
      }
      """;

  final ChildProcess process;
  private final int plainPort;
  private final int tlsPort;

  private Nginx(ChildProcess process, int plainPort, int tlsPort) {
    this.process = process;
    this.plainPort = plainPort;
    this.tlsPort = tlsPort;
  }

  static Nginx serve(Path served, Path work) throws IOException, InterruptedException {
    String self = "openssl req -x509 -newkey rsa:2048 -nodes -days 2 -subj /CN=localhost -batch";
    List<String> command = new java.util.ArrayList<>(List.of(self.split(" ")));
    command.addAll(List.of("-keyout", work + "/key.pem", "-out", work + "/cert.pem"));
    ChildProcess.run(command);
    int plain = freePort();
    int tls = freePort();
    Path file = work.resolve("nginx.conf");
    Files.writeString(file, CONFIGURATION.formatted(work, served, plain, tls));
    ChildProcess process =
        ChildProcess.start(List.of("nginx", "-e", work + "/start.log", "-c", file.toString()));
    for (int tries = 0; tries < 100 && !answers(tls); tries++) {
      LockSupport.parkNanos(50_000_000L);
    }
    return new Nginx(process, plain, tls);
  }

  private static boolean answers(int port) {
    try (Socket socket = new Socket("127.0.0.1", port)) {
      return socket.isConnected();
    } catch (IOException e) {
      return false;
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }

  Target plain(String name) {
    return new Target(URI.create("http://127.0.0.1:" + plainPort + "/" + name), "none=0");
  }

  Target tls(String name) {
    return new Target(URI.create("https://127.0.0.1:" + tlsPort + "/" + name), "none=0");
  }

  @Override
  public void close() {
    process.close();
  }
}
