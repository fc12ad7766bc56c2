import * as v from 'valibot';
import { Message, type ConnectionOptions } from 'vscode-languageserver';

const object = v.looseObject({});

/** The library reads a client's capabilities before it asks us; a client that names none, or only null, has none. */
function withCapabilities(params: unknown): object {
  const given = v.is(object, params) ? params : {};
  return { ...given, capabilities: v.is(object, given['capabilities']) ? given['capabilities'] : {} };
}

/** How messages are taken in, for the connection that the server speaks over. */
export const connectionOptions: ConnectionOptions = {
  messageStrategy: {
    handleMessage: (message, next) => {
      const isHello = Message.isRequest(message) && message.method === 'initialize';
      return next(isHello ? ({ ...message, params: withCapabilities(message.params) } as Message) : message);
    },
  },
};
