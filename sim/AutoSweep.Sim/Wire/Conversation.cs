using System.Threading.Channels;
using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Wire;

/// <summary>One client's talk with an instrument: messages in, replies out, until the client goes.</summary>
/// <remarks>A message that comes while a query is still at work interrupts it (IEEE 488.2, 6.3.2.3).</remarks>
internal sealed class Conversation(IByteStream stream, IInstrument instrument, ReplyWriter replies)
{
    private readonly LineAssembler lines = new(instrument.Report);
    private readonly Channel<string> messages = Channel.CreateUnbounded<string>(new() { SingleReader = true, SingleWriter = true });

    public async Task RunAsync(CancellationToken cancellationToken)
    {
        var listening = ListenAsync(cancellationToken);
        while (await messages.Reader.WaitToReadAsync(cancellationToken))
        {
            while (messages.Reader.TryRead(out var message)) await AnswerAsync(message, cancellationToken);
        }

        await listening;
    }

    private async Task ListenAsync(CancellationToken cancellationToken)
    {
        var buffer = new byte[1024];
        try
        {
            for (int count; (count = await stream.ReadAsync(buffer, cancellationToken)) > 0;)
            {
                foreach (var message in lines.Take(buffer.AsMemory(0, count))) messages.Writer.TryWrite(message);
            }
        }
        finally
        {
            messages.Writer.TryComplete();
        }
    }

    private async ValueTask AnswerAsync(string message, CancellationToken cancellationToken)
    {
        using var interruption = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var answering = instrument.ExecuteAsync(message, interruption.Token);
        var answer = answering.IsCompletedSuccessfully ? answering.Result : await WatchedAsync(answering, message, interruption);
        if (answer is not null) await replies.SendAsync(answer, cancellationToken);
    }

    private async ValueTask<string?> WatchedAsync(ValueTask<string?> answering, string message, CancellationTokenSource interruption)
    {
        var answer = answering.AsTask();
        if (message.Contains('?', StringComparison.Ordinal))
        {
            var next = messages.Reader.WaitToReadAsync(CancellationToken.None).AsTask();
            if (await Task.WhenAny(answer, next) == next) await interruption.CancelAsync();
        }

        return await answer;
    }
}
