using System.Net;

namespace Halfsplit.Server;

/// <summary>
/// Answers only to a name of this machine: another site that points its own name at the loopback address gets nothing.
/// </summary>
internal sealed class LoopbackOnly(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        var host = context.Request.Host.Host;
        if (host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address)))
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
        return Task.CompletedTask;
    }
}
