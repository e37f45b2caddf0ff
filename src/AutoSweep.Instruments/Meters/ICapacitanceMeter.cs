using AutoSweep.Core.Calibration;

namespace AutoSweep.Instruments.Meters;

/// <summary>A bench meter that measures capacitance and dissipation at one test frequency.</summary>
/// <remarks>
/// Open and short correction are the meter's own, done by hand at the clips that will be used; a lead capacitance that it cannot correct
/// is stated when the meter is opened and taken off every reading. Calls are one at a time. Instrument trouble throws
/// <see cref="Core.BenchFaultException"/>; an odd answer is a <see cref="CapacitanceReading"/>.
/// </remarks>
public interface ICapacitanceMeter : IAsyncDisposable
{
    /// <summary>What the meter says it is.</summary>
    InstrumentIdentity Identity { get; }

    /// <summary>The test frequency in hertz.</summary>
    double TestHertz { get; }

    /// <summary>The accuracy of its family, from the driver file.</summary>
    MeterAccuracy Accuracy { get; }

    /// <summary>How long one reading takes.</summary>
    TimeSpan ReadTime { get; }

    /// <summary>One reading of what is at the clips now.</summary>
    Task<CapacitanceReading> ReadAsync(CancellationToken cancellationToken);

    /// <summary>Shows a text on the meter's display, if it can, so that the person at its clips need not look at another screen; no
    /// effect otherwise.</summary>
    /// <param name="text">Printable ASCII without quotes; what is longer than 30 characters is cut.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task ShowAsync(string text, CancellationToken cancellationToken);

    /// <summary>Lets the meter beep, if it can; no effect otherwise.</summary>
    Task BeepAsync(CancellationToken cancellationToken);
}
