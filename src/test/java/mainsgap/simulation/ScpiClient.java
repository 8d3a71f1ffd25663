package mainsgap.simulation;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;

/** A plain client for tests: sends lines, reads lines and blocks. */
final class ScpiClient implements AutoCloseable {
  private final Socket socket;
  private final InputStream in;

  ScpiClient(int port) {
    try {
      socket = new Socket(InetAddress.getLoopbackAddress(), port);
      socket.setSoTimeout(10_000);
      socket.setTcpNoDelay(true);
      in = new BufferedInputStream(socket.getInputStream());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  ScpiClient send(String... messages) {
    try {
      for (String message : messages) {
        socket.getOutputStream().write((message + "\n").getBytes(StandardCharsets.US_ASCII));
      }
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  String ask(String query) {
    send(query);
    return readLine();
  }

  String readLine() {
    StringBuilder line = new StringBuilder();
    for (int b = read(); b != '\n'; b = read()) {
      if (b < 0) {
        throw new AssertionError("closed after '" + line + "'");
      }
      line.append((char) b);
    }
    return line.toString();
  }

  /** A definite length block and its newline. */
  byte[] askBlock(String query) {
    send(query);
    int length = readBlockHeader();
    byte[] bytes = readUpTo(length);
    if (bytes.length != length || read() != '\n') {
      throw new AssertionError("a block of " + length + " bytes came as " + bytes.length);
    }
    return bytes;
  }

  int readBlockHeader() {
    if (read() != '#') {
      throw new AssertionError("no block");
    }
    int digits = read() - '0';
    return Integer.parseInt(new String(readUpTo(digits), StandardCharsets.US_ASCII));
  }

  byte[] readUpTo(int length) {
    try {
      return in.readNBytes(length);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether nothing comes within a short while. */
  boolean staysSilent() {
    try {
      socket.setSoTimeout(150);
      try {
        int unexpected = in.read();
        throw new AssertionError("not silent: byte " + unexpected);
      } catch (SocketTimeoutException e) {
        socket.setSoTimeout(10_000);
        return true;
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  int read() {
    try {
      return in.read();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    try {
      socket.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
