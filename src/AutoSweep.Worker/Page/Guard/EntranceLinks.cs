using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using QRCoder;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>The links by which other screens enter, and the pictures of them that a camera reads (ISO/IEC 18004).</summary>
public static class EntranceLinks
{
    /// <summary>The links, one for each address at which the page is reached from elsewhere.</summary>
    /// <param name="address">The address that is listened on.</param>
    /// <param name="port">The port.</param>
    /// <param name="token">The token.</param>
    public static IEnumerable<string> For(IPAddress address, int port, PageToken token) =>
        (IsAny(address) ? Reached(address) : [address]).Select(one => $"http://{new IPEndPoint(one, port)}{TokenGate.Entrance}?token={token.Text}");

    /// <summary>A link's picture for a terminal, in half blocks, light on dark.</summary>
    public static string Terminal(string link)
    {
        using var data = Picture(link);
        using var code = new AsciiQRCode(data);
        return code.GetGraphicSmall();
    }

    /// <summary>A link's picture as SVG without styles, dark on white whatever the page's colours: cameras want that.</summary>
    public static string Svg(string link)
    {
        using var data = Picture(link);
        var rows = data.ModuleMatrix;
        var dark = Enumerable.Range(0, rows.Count).SelectMany(y =>
            Enumerable.Range(0, rows.Count).Where(x => rows[y][x]).Select(x => $"M{x} {y}h1v1h-1z"));
        return $"<svg viewBox=\"0 0 {rows.Count} {rows.Count}\" width=\"320\" height=\"320\" "
            + "role=\"img\" aria-label=\"The link as a picture for a camera\" "
            + $"shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h{rows.Count}v{rows.Count}h-{rows.Count}z\"/>"
            + $"<path fill=\"#000\" d=\"{string.Concat(dark)}\"/></svg>";
    }

    private static QRCodeData Picture(string link) => QRCodeGenerator.GenerateQrCode(link, QRCodeGenerator.ECCLevel.M);

    private static bool IsAny(IPAddress address) => address.Equals(IPAddress.Any) || address.Equals(IPAddress.IPv6Any);

    private static IEnumerable<IPAddress> Reached(IPAddress any) => NetworkInterface.GetAllNetworkInterfaces()
        .Where(one => one.OperationalStatus == OperationalStatus.Up)
        .SelectMany(one => one.GetIPProperties().UnicastAddresses)
        .Select(one => one.Address)
        .Where(one => !IPAddress.IsLoopback(one) && !one.IsIPv6LinkLocal
            && (one.AddressFamily == AddressFamily.InterNetwork || any.AddressFamily == AddressFamily.InterNetworkV6));
}
