using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Worker.ByHand;

/// <summary>A meter that a person reads: one level a setting, typed.</summary>
public interface IEyeReadMeter : ILevelMeter
{
    /// <summary>What the next level should be about; none where nothing is known.</summary>
    LevelExpectation? Expected { get; set; }

    /// <summary>Asks for the level.</summary>
    /// <param name="canTakeBack">Whether there is a level to take back.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>None when the person takes the level before it back.</returns>
    /// <exception cref="OperationCanceledException">The person stops.</exception>
    Task<TypedLevel?> AskAsync(bool canTakeBack, CancellationToken cancellationToken);

    /// <summary>One standard deviation of a typed level as a share of it: its last digit, and the eye.</summary>
    double RelativeNoise(TypedLevel level);
}
