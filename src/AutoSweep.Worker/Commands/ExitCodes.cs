using AutoSweep.Core;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Commands;

/// <summary>The exit codes of every command, as help and docs list them.</summary>
public static class ExitCodes
{
    /// <summary>Each code with its meaning, in ascending order.</summary>
    public static IReadOnlyList<(int Code, string Meaning)> All { get; } =
    [
        (JobOutcome.Success, "every planned output is done"),
        (JobOutcome.Unforeseen, "a fault that nobody foresaw; the log has it"),
        (JobOutcome.BadUsage, "the command line cannot be understood"),
        ((int)BenchFault.BadFile, "a file that was given cannot be used"),
        ((int)BenchFault.NotReachable, "an instrument cannot be reached; serve: the address cannot be listened on, or the data folder not written"),
        ((int)BenchFault.NoAnswer, "an instrument does not answer, or not so that it can be read"),
        ((int)BenchFault.WrongIdentity, "an instrument is another than it should be"),
        ((int)BenchFault.WrongCalibration, "the calibration belongs to another fixture"),
        ((int)BenchFault.JobInUse, "the job folder is in use, or holds a job already"),
        ((int)BenchFault.JournalNotWritten, "the job folder cannot be written (disk full?)"),
        ((int)BenchFault.JournalDamaged, "the journal has a damaged line in its middle"),
        ((int)BenchFault.FixtureFault, "the fixture did not do as told"),
        (JobOutcome.Missed, "demo: a result is further from the simulated truth than it may be"),
        (JobOutcome.CalibrationOff, "fixture check: the calibration no longer holds"),
        ((int)BenchFault.StockInUse, "the stock ledger is held by other programs"),
        ((int)BenchFault.StockRefused, "the stock does not allow what was asked"),
        ((int)BenchFault.StageNotReady, "the job is not ready for this stage; the message says what is missing"),
        (JobOutcome.MeterDiffers, "driver check --live: the meter does otherwise than its driver says"),
        (JobOutcome.StoppedByPerson, "stopped by the person at the bench; go on with --resume"),
    ];
}
