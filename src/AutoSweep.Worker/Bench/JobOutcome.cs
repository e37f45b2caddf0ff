using AutoSweep.Core;

namespace AutoSweep.Worker.Bench;

/// <summary>How the work ended, for the command's exit code and last words.</summary>
public sealed class JobOutcome
{
    /// <summary>Exit code of a command whose plan is complete.</summary>
    public const int Success = 0;

    /// <summary>Exit code after a fault that nobody foresaw: a bug, or a machine in trouble.</summary>
    public const int Unforeseen = 1;

    /// <summary>Exit code of a command line that cannot be understood.</summary>
    public const int BadUsage = 2;

    /// <summary>Exit code after the person stopped the work with outputs left to do.</summary>
    public const int StoppedByPerson = 20;

    /// <summary>Exit code of a demo whose results miss the simulated truth.</summary>
    public const int Missed = 12;

    /// <summary>Exit code of a check that finds that a fixture's calibration no longer holds.</summary>
    public const int CalibrationOff = 13;

    /// <summary>Exit code of a check with hardware that finds a meter otherwise than its driver says.</summary>
    public const int MeterDiffers = 17;

    /// <summary>The exit code; the faults of <see cref="BenchFault"/> keep their own number.</summary>
    public int ExitCode { get; private set; } = StoppedByPerson;

    /// <summary>What went wrong, or none.</summary>
    public Exception? Fault { get; private set; }

    /// <summary>Every planned output is done.</summary>
    public void Completed() => ExitCode = Success;

    /// <summary>The plan is complete, but a result misses the simulated truth.</summary>
    public void MissedTruth() => ExitCode = Missed;

    /// <summary>The check is done; the calibration no longer holds.</summary>
    public void CalibrationIsOff() => ExitCode = CalibrationOff;

    /// <summary>The check is done; the driver's folder has faults.</summary>
    public void DriverHasFaults() => ExitCode = (int)BenchFault.BadFile;

    /// <summary>The check is done; the meter does otherwise than its driver says.</summary>
    public void MeterIsOtherwise() => ExitCode = MeterDiffers;

    /// <summary>The person stopped the work.</summary>
    public void Stopped() => ExitCode = StoppedByPerson;

    /// <summary>A fault stopped the work.</summary>
    public void Failed(Exception fault) => (ExitCode, Fault) = (fault is BenchFaultException known ? (int)known.Kind : Unforeseen, fault);
}
