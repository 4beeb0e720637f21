"""A machine of IPC-2591 by another AMQP 1.0 library (python3-qpid-proton): sends panels, and sends again what was not accepted.

Prints one line of JSON: how many messages were accepted, and why it ended where it was not let in.
"""

import gzip
import json
import sys
import uuid
from datetime import datetime, timezone

from proton import Message, SSLDomain, Terminus
from proton.handlers import MessagingHandler
from proton.reactor import Container, SenderOption


class Durable(SenderOption):
    """A broker's queue outlasts it where both ends say so."""

    def apply(self, sender):
        sender.target.durability = Terminus.DELIVERIES


def envelope(name, body):
    """Fields as the standard's organisation publishes them (CFX/CFXEnvelope.cs)."""
    stamp = datetime.now(timezone.utc).strftime('%Y-%m-%dT%H:%M:%S.%f') + '0+00:00'
    return {
        'MessageName': 'CFX.' + name, 'Version': '1.7', 'TimeStamp': stamp, 'UniqueID': str(uuid.uuid4()),
        'Source': 'L1.Placer', 'Target': None, 'RequestID': None,
        'MessageBody': {'$type': 'CFX.' + name + ', CFX', **body},
    }


def panel(number):
    work = str(uuid.uuid4())
    return [
        envelope('Production.WorkStarted', {
            'PrimaryIdentifier': 'P-%06d' % number, 'HermesIdentifier': None, 'TransactionID': work, 'Lane': 1,
            'UnitCount': 0, 'Units': []}),
        envelope('Production.WorkCompleted', {'TransactionID': work, 'Result': 'Completed'}),
    ]


def message(envelopes, packed):
    text = json.dumps(envelopes if len(envelopes) > 1 else envelopes[0]).encode('utf-8')
    told = Message(body=gzip.compress(text) if packed else text, inferred=True, durable=True)
    told.content_type = 'application/json; charset="utf-8"'
    told.id = envelopes[0]['UniqueID']
    if packed:
        told.content_encoding = 'gzip'
    return told


class Machine(MessagingHandler):
    def __init__(self, wish):
        super().__init__()
        self.wish = wish
        self.waiting = [message([envelope('Heartbeat', {'CFXHandle': 'L1.Placer', 'HeartbeatFrequency': '00:01:00'})], True)]
        for number in range(wish['panels']):
            both = panel(number)
            # Both in one message, or each in its own.
            self.waiting += [message(both, number % 2 == 0)] if number % 3 == 0 else [message([each], number % 2 == 0) for each in both]
        self.open = {}
        self.accepted = 0
        self.opened = 0
        self.failed = None
        self.sender = None

    def on_start(self, event):
        options = {'allowed_mechs': self.wish['mechanism'], 'reconnect': None if self.wish.get('again') else False}
        if self.wish.get('authority'):
            domain = SSLDomain(SSLDomain.MODE_CLIENT)
            domain.set_trusted_ca_db(self.wish['authority'])
            domain.set_peer_authentication(SSLDomain.VERIFY_PEER_NAME)
            options['ssl_domain'] = domain
        if self.wish.get('user'):
            options.update(user=self.wish['user'], password=self.wish['password'], allow_insecure_mechs=True)
        connection = event.container.connect(self.wish['url'], **{key: value for key, value in options.items() if value is not None})
        kept = [Durable()] if self.wish.get('durable') else []
        self.sender = event.container.create_sender(connection, self.wish['address'], options=kept)
        event.container.schedule(0.005, self)

    def on_timer_task(self, event):
        if self.failed:
            return
        if self.waiting and self.sender.credit > 0 and len(self.open) < 20:
            told = self.waiting.pop(0)
            self.open[self.sender.send(told).tag] = told
        elif not self.waiting and not self.open:
            self.sender.connection.close()
            return
        event.container.schedule(0.005, self)

    def on_accepted(self, event):
        if self.open.pop(event.delivery.tag, None) is not None:
            self.accepted += 1

    def again(self, event):
        told = self.open.pop(event.delivery.tag, None)
        if told is not None:
            self.waiting.insert(0, told)

    on_rejected = again
    on_released = again

    def on_connection_opened(self, event):
        self.opened += 1
        # After a connection that was lost: what was on its way is sent again, by the same UniqueID.
        self.waiting = list(self.open.values()) + self.waiting
        self.open = {}

    def on_disconnected(self, event):
        if not self.wish.get('again'):
            self.failed = self.failed or 'disconnected'

    def on_transport_error(self, event):
        if not self.wish.get('again'):
            condition = event.transport.condition
            self.failed = condition.name if condition else 'transport'
            event.container.stop()


machine = Machine(json.loads(sys.argv[1]))
Container(machine).run()
print(json.dumps({'accepted': machine.accepted, 'opened': machine.opened, 'failed': machine.failed}))
