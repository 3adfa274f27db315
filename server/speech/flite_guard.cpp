#include "speech/flite_guard.h"

#include <csetjmp>
#include <mutex>

extern "C" {
#include <flite/cst_error.h>
}

namespace say::flite {

bool guarded(void (*call)(void* data), void* data) {
    static std::mutex mutex;
    const std::lock_guard lock(mutex);
    volatile bool well = false; // its value must be known after a jump
    jmp_buf on_error;
    cst_errjmp = &on_error;
    if (setjmp(on_error) == 0) {
        call(data);
        well = true;
    }
    cst_errjmp = nullptr;
    return well;
}

} // namespace say::flite
