using AutoSweep.Core.Stock;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Parts;

public sealed class OldSetReadingTests : IDisposable
{
    private const string Job = "Invented, opened 2026-01-02T03:04:05Z";

    private readonly TemporaryFolder _folder = new();
    private readonly StringWriter _told = new();
    private readonly OldSetWords _words = new();

    private StockLedger Ledger => new(_folder.File("stock.jsonl"), TimeProvider.System);

    [Fact]
    public async Task Each_output_is_asked_for_read_written_down_and_beeped_for()
    {
        var parts = new FakeParts(112_400, 98_000);

        var count = await ReadAsync(parts, [3, 7], new(100_000, 1958));

        Assert.Equal(2, count);
        Assert.Equal([3, 7], parts.AskedOutputs);
        Assert.Equal([true, true], parts.Signals);
        Assert.Equal([(3, 112_400L), (7, 98_000L)], Olds().Select(old => (old.Output, old.Measured!.Picofarads)));
        Assert.All(Olds(), old => Assert.Equal((Job, 100_000L, 1958, "Invented,Bridge,7,1"), (old.Job, old.NominalPicofarads, old.MadeIn, old.Measured!.Meter)));
        Assert.Contains("output   3: 112.40 nF, D 0.0004, +12.4 %", _told.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_that_is_written_down_is_not_asked_for_again_and_one_that_was_taken_back_is()
    {
        await ReadAsync(new FakeParts(112_400), [3, 7], new(null, null));
        await StockLedgerUndo();
        var parts = new FakeParts(99_000);
        await ReadAsync(parts, [3, 7], new(null, null));
        Assert.Equal([3, 7], parts.AskedOutputs);

        var rest = new FakeParts(98_000);
        await ReadAsync(rest, [3, 7], new(null, null));

        Assert.Equal([7], rest.AskedOutputs);
        Assert.Equal([(3, 99_000L), (7, 98_000L)], Olds().Select(old => (old.Output, old.Measured!.Picofarads)));
    }

    [Fact]
    public async Task What_is_no_capacitor_any_more_is_written_down_as_that_and_one_left_out_is_not()
    {
        var parts = new SilentParts();
        var reading = ReadAsync(parts, [3, 7, 9], new(null, null));
        await parts.AskedForAsync(3);
        _words.Say(3, OldSetWord.NoCapacitor);
        // A second press for the same one comes late, and is none of the next one's.
        _words.Say(3, OldSetWord.NoCapacitor);
        await parts.AskedForAsync(7);
        _words.Say(7, OldSetWord.LeftOut);
        await parts.AskedForAsync(9);
        parts.Gives(47_000);

        Assert.Equal(2, await reading);
        Assert.Equal([(3, (long?)null), (9, 47_000L)], Olds().Select(old => (old.Output, old.Measured?.Picofarads)));
        Assert.True(parts.IsFinished);
    }

    [Fact]
    public async Task A_stop_leaves_nothing_asked_for_on_the_display()
    {
        var parts = new SilentParts();
        using var stop = new CancellationTokenSource();
        var reading = ReadAsync(parts, [3], new(null, null), stop.Token);
        await parts.AskedForAsync(3);

        await stop.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => reading);
        Assert.True(parts.IsFinished);
        Assert.Empty(Olds());
    }

    public void Dispose()
    {
        _folder.Dispose();
        _told.Dispose();
    }

    private Task<int> ReadAsync(IPartSource parts, int[] outputs, OldSetLabel label, CancellationToken cancellationToken = default) =>
        new OldSetReading(parts, Ledger, Job, outputs, label, _words, _told, TimeProvider.System).RunAsync(cancellationToken);

    private Task StockLedgerUndo() => AutoSweep.Worker.Page.Intake.StockFile.TakeBackAsync(Ledger);

    private List<OldCapacitorRemoved> Olds() => [.. Ledger.Read().OldCapacitors.Values.OrderBy(old => old.Output)];

    /// <summary>Clips that stay empty until the test says what is on them.</summary>
    private sealed class SilentParts : IPartSource
    {
        private readonly System.Threading.Channels.Channel<int> _asked = System.Threading.Channels.Channel.CreateUnbounded<int>();
        private readonly TaskCompletionSource<MeasuredPart?> _part = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public string? Meter => null;

        public bool IsFinished { get; private set; }

        public async Task AskedForAsync(int output) => Assert.Equal(output, await _asked.Reader.ReadAsync().AsTask().WaitAsync(TimeSpan.FromSeconds(60), TimeProvider.System));

        public void Gives(long picofarads) => _part.SetResult(new(new(picofarads), 1, null));

        public async Task AskForAsync(int output, IReadOnlyList<string> parts, CancellationToken cancellationToken)
        {
            Assert.Empty(parts);
            await _asked.Writer.WriteAsync(output, cancellationToken);
        }

        public Task FinishAsync(CancellationToken cancellationToken)
        {
            IsFinished = true;
            return Task.CompletedTask;
        }

        public Task<MeasuredPart?> NextAsync(CancellationToken cancellationToken) => _part.Task.WaitAsync(cancellationToken);

        public Task SignalAsync(bool isFine, CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
