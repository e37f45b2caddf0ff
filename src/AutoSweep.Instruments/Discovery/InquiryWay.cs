using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Discovery;

/// <summary>One way of asking: the settings of a serial line and what ends messages.</summary>
/// <param name="Serial">The line.</param>
/// <param name="Session">The terminators and the time.</param>
internal sealed record InquiryWay(SerialSettings Serial, ScpiSessionOptions Session)
{
    public override string ToString() => FormattableString.Invariant(
        $"{Serial.Baud} {Serial.DataBits}{Serial.Parity.ToString()[0]}{Serial.StopBits}, {Ended(Session.Terminator)}");

    private static string Ended(string terminator) => terminator switch
    {
        "\r\n" => "CR LF",
        "\r" => "CR",
        _ => "LF",
    };
}
