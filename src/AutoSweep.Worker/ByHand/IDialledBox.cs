using AutoSweep.Core.Decades;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Worker.ByHand;

/// <summary>A box that a person dials: each setting costs a minute, and its values are only as good as the box.</summary>
public interface IDialledBox : ICapacitanceFixture
{
    /// <summary>What the box can be set to.</summary>
    DecadeBox Box { get; }

    /// <summary>Asks for a setting.</summary>
    /// <param name="wanted">The wanted total.</param>
    /// <param name="canTakeBack">Whether there is a level to take back.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>What the dials say now, stray included; none when the person takes the level before it back.</returns>
    /// <exception cref="OperationCanceledException">The person stops.</exception>
    Task<Capacitance?> DialAsync(Capacitance wanted, bool canTakeBack, CancellationToken cancellationToken);

    /// <summary>Asks for the box on the capacitance meter, as it stands.</summary>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <exception cref="OperationCanceledException">The person stops.</exception>
    Task<BoxMeasurement> MeasureAsync(CancellationToken cancellationToken);
}
