namespace AutoSweep.Core.Decades;

/// <summary>Refuses the description of a box that cannot be.</summary>
public static class DecadeBoxChecks
{
    /// <summary>Looks it through.</summary>
    /// <param name="box">The box, as a file describes it.</param>
    /// <param name="file">The file, for the message.</param>
    /// <exception cref="BenchFaultException">No dial, dials out of order, or another number of measured values than positions.</exception>
    public static void Check(DecadeBox box, string file)
    {
        ArgumentNullException.ThrowIfNull(box);
        if (box.Decades.Count is 0 or > 7)
            throw Fault(file, $"{box.Decades.Count} dials", "one to seven dials, the largest first");
        for (var dial = 0; dial < box.Decades.Count; dial++)
        {
            var decade = box.Decades[dial];
            if (dial > 0 && decade.StepPicofarads >= box.Decades[dial - 1].StepPicofarads)
                throw Fault(file, $"a dial of {decade.StepPicofarads} pF after one of {box.Decades[dial - 1].StepPicofarads} pF", "the largest dial first");
            if (decade.MeasuredPicofarads is { } measured && measured.Count != decade.Steps)
                throw Fault(file, $"{measured.Count} measured values for a dial with {decade.Steps} positions", "one value for each position from 1 up");
            if (decade.MeasuredPicofarads is { } values && values.Select((value, at) => value / (decade.StepPicofarads * (at + 1.0))).Any(share => share is < 0.7 or > 1.3))
                throw Fault(file, $"a measured value 30 % off on the dial of {decade.StepPicofarads} pF", "measured values near the printed ones");
        }
    }

    private static BenchFaultException Fault(string file, string found, string expected) =>
        new(BenchFault.BadFile, $"{file}: the box has {found}", expected, "mend \"box\" in the file; docs/by-hand.md has an example");
}
