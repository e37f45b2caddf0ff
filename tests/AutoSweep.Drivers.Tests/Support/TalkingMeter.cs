using System.Text;
using System.Threading.Channels;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Drivers.Tests.Support;

/// <summary>A meter that takes every command and has an error queue.</summary>
public sealed class TalkingMeter(MeterDriver driver) : ILink
{
    private readonly Channel<byte[]> _toHost = Channel.CreateUnbounded<byte[]>();

    public ResourceName Resource { get; } = ResourceName.Parse("TCPIP::meter.test::5025::SOCKET");

    public List<string> Errors { get; init; } = [];

    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        var line = Encoding.ASCII.GetString(bytes.Span).Trim();
        if (line == "*IDN?")
            Answer($"{driver.Identity[0].Maker.Replace('*', 'M')},{driver.Identity[0].Model.Replace('*', '1')},0,1.0");
        else if (line == driver.ErrorQuery)
            Answer(NextError());
        return ValueTask.CompletedTask;
    }

    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        var bytes = await _toHost.Reader.ReadAsync(cancellationToken);
        bytes.CopyTo(buffer);
        return bytes.Length;
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private string NextError()
    {
        if (Errors.Count == 0)
            return "0,\"No error\"";
        var error = Errors[0];
        Errors.RemoveAt(0);
        return error;
    }

    private void Answer(string text) => _toHost.Writer.TryWrite(Encoding.ASCII.GetBytes(text + "\n"));
}
