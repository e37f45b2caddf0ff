using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Stock;

/// <summary>The shop's stock on disk: one append-only file of checksummed lines, for any number of programs at once.</summary>
/// <remarks>
/// Every change is a transaction: take the lock, read what others wrote, check the event against the stock as it is now, append it as
/// one line, wait for the disk, release. A program that dies in between leaves a torn last line at most, of which nobody was told.
/// One instance may be used from several tasks.
/// </remarks>
public sealed class StockLedger
{
    private readonly TimeProvider _clock;
    private readonly StockLedgerOptions _options;
    private readonly Lock _gate = new();
    private StockState _state = StockState.Empty;
    private long _sound;

    /// <summary>A ledger.</summary>
    /// <param name="path">The file; made with the first event.</param>
    /// <param name="clock">The wall clock.</param>
    /// <param name="options">How to wait for other programs.</param>
    public StockLedger(string path, TimeProvider clock, StockLedgerOptions? options = null) =>
        (Path, _clock, _options) = (System.IO.Path.GetFullPath(path), clock, options ?? new());

    /// <summary>The file's full path.</summary>
    public string Path { get; }

    /// <summary>The stock as it stands on disk now. Needs no lock: a line that is being written does not count yet.</summary>
    /// <exception cref="BenchFaultException">The ledger cannot be read, or is damaged in its middle.</exception>
    public StockState Read()
    {
        lock (_gate)
        {
            CatchUp();
            return _state;
        }
    }

    /// <summary>Appends an event, if the stock allows it.</summary>
    /// <exception cref="BenchFaultException">The ledger is damaged, cannot be written, or others hold it for too long.</exception>
    public Task<LedgerAnswer> AppendAsync(StockEvent what, CancellationToken cancellationToken) =>
        AppendAsync(_ => what, cancellationToken);

    /// <summary>Appends what is decided in view of the stock as it is under the lock.</summary>
    /// <param name="decide">The event, or none to leave the stock as it is.</param>
    /// <param name="cancellationToken">Gives up waiting for the lock.</param>
    /// <exception cref="BenchFaultException">The ledger is damaged, cannot be written, or others hold it for too long.</exception>
    public async Task<LedgerAnswer> AppendAsync(Func<StockState, StockEvent?> decide, CancellationToken cancellationToken)
    {
        MakeFolder();
        using var held = await LedgerLock.TakeAsync(Path + ".lock", _options, _clock, cancellationToken);
        lock (_gate)
        {
            CatchUp();
            if (decide(_state) is not { } what)
                return new(null, null, _state);
            return StockRules.Refusal(_state, what) is { } refusal ? new(null, refusal, _state) : Append(what);
        }
    }

    /// <summary>Sets damaged lines aside: the file is kept as it is under another name, the sound lines go on to count.</summary>
    /// <returns>How many lines were set aside.</returns>
    public async Task<int> SetDamageAsideAsync(CancellationToken cancellationToken)
    {
        using var held = await LedgerLock.TakeAsync(Path + ".lock", _options, _clock, cancellationToken);
        lock (_gate)
        {
            var text = LedgerText.ReadFrom(Path, 0, 0);
            if (text.Damaged.Count > 0)
                LedgerText.Repair.SetAside(Path, text, _clock);
            (_state, _sound) = (StockState.Empty, 0);
            return text.Damaged.Count;
        }
    }

    private LedgerAnswer Append(StockEvent what)
    {
        var entry = new StockEntry(_state.Sequence + 1, _clock.GetUtcNow(), what);
        using var file = AppendOnlyFile.Open(Path, "the stock ledger", _sound);
        file.Append(ChecksummedLine.Write(entry));
        (_state, _sound) = (_state.Apply(entry), file.SoundLength);
        return new(entry, null, _state);
    }

    // The tail first; where that does not follow, another program has put a repaired file in its place, and all of it is read.
    private void CatchUp()
    {
        var tail = LedgerText.ReadFrom(Path, _sound, _state.Sequence);
        if (tail.Damaged.Count > 0 || tail.TornTail && _sound > 0)
        {
            (_state, _sound) = (StockState.Empty, 0);
            tail = LedgerText.ReadFrom(Path, 0, 0);
        }

        if (tail.Damaged.Count > 0)
            throw LedgerText.Damaged(Path, tail);
        _state = tail.Entries.Aggregate(_state, (state, entry) => state.Apply(entry));
        _sound += tail.SoundLength;
    }

    private void MakeFolder()
    {
        try
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Path)!);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BenchFaultException(BenchFault.BadFile, $"the folder of {Path} cannot be made ({fault.Message})",
                "a data folder that this user may write", "mend the permissions, or name another", fault) { AtTerminal = "--stock" };
        }
    }
}
