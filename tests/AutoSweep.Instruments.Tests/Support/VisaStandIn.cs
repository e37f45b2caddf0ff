using System.Diagnostics;
using System.Runtime.InteropServices;
using AutoSweep.Instruments.Links.Visa;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>The stand-in for an installed VISA library: StandIn/visa.c, compiled once for the whole run. One test at a time uses it.</summary>
public sealed unsafe class VisaStandIn : IDisposable
{
    public const string Collection = "the VISA stand-in";

    public const string WhyNot = "The stand-in for a VISA library needs Linux and a C compiler (cc); there is none here.";

    private static readonly Lazy<string> Built = new(Build);

    private readonly nint _library = NativeLibrary.Load(Built.Value);

    public VisaStandIn() => Call("standin_reset");

    public static bool CanBeBuilt { get; } = OperatingSystem.IsLinux()
        && (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Any(folder => File.Exists(Path.Combine(folder, "cc")));

    public static string FileName => Built.Value;

    public VisaLibraryNames Names { get; } = new([Built.Value]);

    public int OpenSessions => ((delegate* unmanaged<int>)NativeLibrary.GetExport(_library, "standin_open_sessions"))();

    public void Add(string name, int port) => Call("standin_add", name, port);

    public void FailNext(string function, int status) => Call("standin_fail", function, status);

    public void InPieces(int bytes) => Call("standin_piece", bytes);

    public void SayNothingInTheStatusByte() => Call("standin_mute", 1);

    public int Calls(string name)
    {
        fixed (byte* text = Zeroed(name))
            return ((delegate* unmanaged<byte*, int>)NativeLibrary.GetExport(_library, "standin_calls"))(text);
    }

    public ulong Attribute(uint id) => ((delegate* unmanaged<uint, ulong>)NativeLibrary.GetExport(_library, "standin_attribute"))(id);

    public void Dispose() => Call("standin_reset");

    private static string Build()
    {
        var folder = Directory.CreateTempSubdirectory("autosweep-visa-").FullName;
        var library = Path.Combine(folder, "libvisa-standin.so");
        var source = Path.Combine(AppContext.BaseDirectory, "StandIn", "visa.c");
        using var compiler = Process.Start("cc", ["-O1", "-Wall", "-Wextra", "-Werror", "-shared", "-fPIC", "-o", library, source, "-lpthread"]);
        compiler.WaitForExit();
        return compiler.ExitCode == 0 ? library : throw new InvalidOperationException($"{source} does not compile.");
    }

    private void Call(string function) => ((delegate* unmanaged<void>)NativeLibrary.GetExport(_library, function))();

    private void Call(string function, int value) => ((delegate* unmanaged<int, void>)NativeLibrary.GetExport(_library, function))(value);

    private void Call(string function, string text, int value)
    {
        fixed (byte* bytes = Zeroed(text))
            ((delegate* unmanaged<byte*, int, void>)NativeLibrary.GetExport(_library, function))(bytes, value);
    }

    private static byte[] Zeroed(string text) => System.Text.Encoding.ASCII.GetBytes(text + '\0');
}
