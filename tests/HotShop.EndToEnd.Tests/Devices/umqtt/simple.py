"""A stand-in for the board's MQTT client with the same calls: connects (MQTT 3.1.1), and publishes with QoS 1 until it is acknowledged."""
import socket
import struct


class MQTTClient:
    def __init__(self, client_id, server, port=1883, user=None, password=None, keepalive=0):
        self.client_id, self.server, self.port, self.user, self.password, self.keepalive = client_id, server, port, user, password, keepalive
        self.number = 0

    def connect(self):
        self.sock = socket.create_connection((self.server, self.port), timeout=5)
        flags = 0x02 | (0xC0 if self.user else 0)
        body = text("MQTT") + struct.pack(">BBH", 4, flags, self.keepalive) + text(self.client_id)
        if self.user:
            body += text(self.user) + text(self.password)
        self.sock.sendall(packet(0x10, body))
        if self.read(4) != b"\x20\x02\x00\x00":
            raise OSError("connection refused")

    def publish(self, topic, message, retain=False, qos=0):
        assert qos == 1 and not retain
        self.number = self.number % 65535 + 1
        self.sock.sendall(packet(0x32, text(topic) + struct.pack(">H", self.number) + message.encode()))
        if self.read(4) != b"\x40\x02" + struct.pack(">H", self.number):
            raise OSError("no acknowledgement")

    def read(self, wanted):
        got = b""
        while len(got) < wanted:
            more = self.sock.recv(wanted - len(got))
            if not more:
                raise OSError("connection closed")
            got += more
        return got


def text(words):
    raw = words.encode()
    return struct.pack(">H", len(raw)) + raw


def packet(kind, body):
    length, left = b"", len(body)
    while True:
        left, digit = left >> 7, left & 0x7F
        length += bytes([digit | (0x80 if left else 0)])
        if not left:
            return bytes([kind]) + length + body
