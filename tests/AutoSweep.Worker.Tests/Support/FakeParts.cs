using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>Parts that measure what the test has written down; after the last one the person has ended the work.</summary>
internal sealed class FakeParts(params long[] picofarads) : IPartSource
{
    private readonly Queue<long> _values = new(picofarads);

    public List<string> Asked { get; } = [];

    public List<int> AskedOutputs { get; } = [];

    public List<bool> Signals { get; } = [];

    public string? Meter => "Invented,Bridge,7,1";

    public Task FinishAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task AskForAsync(int output, IReadOnlyList<string> parts, CancellationToken cancellationToken)
    {
        Asked.Add(string.Join('+', parts));
        AskedOutputs.Add(output);
        return Task.CompletedTask;
    }

    public Task<MeasuredPart?> NextAsync(CancellationToken cancellationToken) =>
        Task.FromResult(_values.TryDequeue(out var value) ? new MeasuredPart(new Capacitance(value), 30, 0.0004) : null);

    public Task SignalAsync(bool isFine, CancellationToken cancellationToken)
    {
        Signals.Add(isFine);
        return Task.CompletedTask;
    }
}
