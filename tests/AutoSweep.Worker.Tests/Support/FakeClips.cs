using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>Clips whose confirmation at the end of a sweep is written down beforehand.</summary>
internal sealed class FakeClips : IClipSource
{
    public Queue<ToneSight> Sights { get; } = [];

    public Task<ClipVerdict> NextAsync(JobStage stage, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<ToneSight> ConfirmAsync(int output, CancellationToken cancellationToken) =>
        Task.FromResult(Sights.TryDequeue(out var sight) ? sight : new ToneSight.Tone(output, 1000));
}
